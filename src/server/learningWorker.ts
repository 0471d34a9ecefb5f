import { parentPort } from 'node:worker_threads';
import type { Knowledge } from '../knowledge/schema.ts';
import { type ReckonedCase, reckonSettled } from '../learning/runningScore.ts';
import type { SettledCase } from '../learning/settledCase.ts';
import type { JobStep } from './jobs.ts';
import type { WorkerQuestion, WorkerWord } from './workerQueue.ts';

/** What is reckoned: settled cases by knowledge that has none of them taken in. */
export type LearningQuestion = { cases: SettledCase[]; knowledge: Knowledge; yearNow: number };

/** Reckons settled cases in a thread of its own: fifty take minutes, and entries must not wait for them. */
parentPort?.on('message', ({ ask, question }: WorkerQuestion<LearningQuestion>) => {
  const say = (word: WorkerWord<ReckonedCase[], JobStep>) => parentPort?.postMessage(word);
  try {
    const { cases, knowledge, yearNow } = question;
    const step = (share: number) => {
      const done = Math.round(share * cases.length);
      say({ ask, step: { step: `Case ${done + 1} of ${cases.length}`, done, total: cases.length } });
      return true;
    };
    say({ ask, answer: reckonSettled(cases, knowledge, yearNow, step) });
  } catch (error) {
    say({ ask, failed: (error as Error).message });
  }
});
