import { parentPort, workerData } from 'node:worker_threads';
import { type IssuedFiles, type IssueOf, setIssued } from '../opinion/setIssued.ts';
import type { OpinionOf } from '../opinion/setOpinion.ts';
import { setOpinion } from '../opinion/setOpinion.ts';
import type { PlateOf } from './askOpinion.ts';
import { knowledgeInFile } from './knowledgeInFile.ts';
import type { WorkerQuestion } from './workerDesk.ts';

/** An opinion asked of the thread that sets it: a draft, or with `issue` all files of a revision. */
export type OpinionQuestion = Pick<OpinionOf, 'piece' | 'yearNow' | 'madeOn'> & {
  plates: readonly PlateOf[];
  issue?: Pick<IssueOf, 'document' | 'photos' | 'head'>;
};

/** The PDF of a draft, or a revision's files. */
export type OpinionAnswer = Uint8Array | IssuedFiles;

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
