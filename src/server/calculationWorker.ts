import { readFileSync } from 'node:fs';
import { parentPort, workerData } from 'node:worker_threads';
import { runCalculation } from '../calculations/runCalculation.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { CalculationQuestion } from './calculationRoutes.ts';
import type { WorkerQuestion } from './workerDesk.ts';

/** Runs calculations in a thread of its own: a long weighing never holds up what an examiner enters meanwhile. */
const { knowledgeFile } = workerData as { knowledgeFile: string };
const knowledge = JSON.parse(readFileSync(knowledgeFile, 'utf8')) as Knowledge;

parentPort?.on('message', ({ ask, question }: WorkerQuestion<CalculationQuestion>) => {
  try {
    const answer = runCalculation(question.id, question.input, { knowledge, yearNow: question.yearNow });
    parentPort?.postMessage({ ask, answer });
  } catch (error) {
    parentPort?.postMessage({ ask, failed: (error as Error).message });
  }
});
