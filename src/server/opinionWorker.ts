import { parentPort, workerData } from 'node:worker_threads';
import { setIssued } from '../opinion/setIssued.ts';
import { setOpinion } from '../opinion/setOpinion.ts';
import { knowledgeInFile } from './knowledgeInFile.ts';
import type { OpinionQuestion } from './opinionQuestion.ts';
import type { WorkerQuestion } from './workerQueue.ts';

/** Weighs, composes and sets opinions in a thread of its own: pages take seconds, and entries must not wait for them. */
const { knowledgeFile, version } = workerData as { knowledgeFile: string; version: string };

const knowledge = knowledgeInFile(knowledgeFile);

parentPort?.on('message', async ({ ask, question }: WorkerQuestion<OpinionQuestion>) => {
  try {
    const onStep = (step: string, done: number, total: number) =>
      parentPort?.postMessage({ ask, step: { step, done, total } });
    const { issue, ...asked } = question;
    const of = { ...asked, knowledge: knowledge(), version };
    const answer = await (issue === undefined
      ? setOpinion(of, onStep)
      : setIssued({ ...of, ...issue }, onStep));
    parentPort?.postMessage({ ask, answer });
  } catch (error) {
    parentPort?.postMessage({ ask, failed: (error as Error).message });
  }
});
