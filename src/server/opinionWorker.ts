import { parentPort, workerData } from 'node:worker_threads';
import type { OpinionOf } from '../opinion/setOpinion.ts';
import { setOpinion } from '../opinion/setOpinion.ts';
import type { PlateOf } from './askOpinion.ts';
import { knowledgeInFile } from './knowledgeInFile.ts';
import type { WorkerQuestion } from './workerDesk.ts';

/** An opinion asked of the thread that sets it. */
export type OpinionQuestion = Pick<OpinionOf, 'piece' | 'yearNow' | 'madeOn'> & {
  plates: readonly PlateOf[];
};

/** Weighs, composes and sets opinions in a thread of its own: pages take seconds, and entries must not wait for them. */
const { knowledgeFile, version } = workerData as { knowledgeFile: string; version: string };
const knowledge = knowledgeInFile(knowledgeFile);

parentPort?.on('message', async ({ ask, question }: WorkerQuestion<OpinionQuestion>) => {
  try {
    const onStep = (step: string, done: number, total: number) =>
      parentPort?.postMessage({ ask, step: { step, done, total } });
    const answer = await setOpinion({ ...question, knowledge: knowledge(), version }, onStep);
    parentPort?.postMessage({ ask, answer });
  } catch (error) {
    parentPort?.postMessage({ ask, failed: (error as Error).message });
  }
});
