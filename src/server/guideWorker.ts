import { parentPort, workerData } from 'node:worker_threads';
import { fieldGuide, type GuideOf } from '../opinion/fieldGuide.ts';
import { makeFieldGuide } from '../opinion/makeFieldGuide.ts';
import { knowledgeInFile } from './knowledgeInFile.ts';
import type { WorkerQuestion } from './workerQueue.ts';

/** Sets field guides in a thread of its own: a guide of fifty signs takes seconds, and entries must not wait for them. */
const { knowledgeFile } = workerData as { knowledgeFile: string };
const knowledge = knowledgeInFile(knowledgeFile);

parentPort?.on('message', async ({ ask, question }: WorkerQuestion<GuideOf>) => {
  try {
    const guide = fieldGuide(question, knowledge());
    const answer = guide === undefined ? undefined : await makeFieldGuide(guide);
    parentPort?.postMessage({ ask, answer });
  } catch (error) {
    parentPort?.postMessage({ ask, failed: (error as Error).message });
  }
});
