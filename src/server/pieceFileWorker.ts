import { parentPort, workerData } from 'node:worker_threads';
import { type WritePieceRequest, writePieceFile } from '../record/pieceFile/writePieceFile.ts';
import { knowledgeInFile } from './knowledgeInFile.ts';
import type { WorkerQuestion } from './workerQueue.ts';

/** A piece asked to be taken out, by a thread that reads the knowledge itself. */
export type TakeOutQuestion = Omit<WritePieceRequest, 'knowledge'>;

/** Takes pieces out in a thread of its own: weighing and hashing take seconds, and entries must not wait for them. */
const { knowledgeFile } = workerData as { knowledgeFile: string };
const knowledge = knowledgeInFile(knowledgeFile);

parentPort?.on('message', async ({ ask, question }: WorkerQuestion<TakeOutQuestion>) => {
  try {
    const answer = await writePieceFile({ ...question, knowledge: knowledge() }, (step) =>
      parentPort?.postMessage({ ask, step }),
    );
    parentPort?.postMessage({ ask, answer });
  } catch (error) {
    parentPort?.postMessage({ ask, failed: (error as Error).message });
  }
});
