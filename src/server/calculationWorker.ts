import { parentPort, workerData } from 'node:worker_threads';
import { runById } from '../calculations/runById.ts';
import type { Outcome } from '../ground/fault.ts';
import type { Picture } from '../photo/picture.ts';
import { photoLimits } from '../record/photos.ts';
import { readPixels } from '../record/readPixels.ts';
import { takingTurns } from '../record/turns.ts';
import type { CalculationQuestion } from './calculationRoutes.ts';
import { knowledgeInFile } from './knowledgeInFile.ts';
import type { WorkerQuestion } from './workerQueue.ts';

/** Runs calculations in a thread of its own: a long weighing never holds up what an examiner enters meanwhile. */
const { knowledgeFile } = workerData as { knowledgeFile: string };
const knowledge = knowledgeInFile(knowledgeFile);

// One at a time: pictures are unpacked whole.
const inTurn = takingTurns(1);

parentPort?.on('message', (asked: WorkerQuestion<CalculationQuestion>) => void inTurn(() => answerTo(asked)));

async function answerTo({ ask, question }: WorkerQuestion<CalculationQuestion>): Promise<void> {
  try {
    const { id, input, yearNow, picturePaths = {} } = question;
    const pictures = await readPictures(picturePaths);
    const answer = pictures.ok
      ? runById(id, input, { knowledge: knowledge(), yearNow, pictures: pictures.value })
      : pictures;
    parentPort?.postMessage({ ask, answer });
  } catch (error) {
    parentPort?.postMessage({ ask, failed: (error as Error).message });
  }
}

async function readPictures(paths: Record<string, string>): Promise<Outcome<Map<string, Picture>>> {
  const pictures = new Map<string, Picture>();
  for (const [name, path] of Object.entries(paths)) {
    const read = await readPixels(path, {
      ...photoLimits,
      heicWorker: new URL('./heicWorker.js', import.meta.url),
    });
    if (!read.ok) return read;
    pictures.set(name, read.value);
  }
  return { ok: true, value: pictures };
}
