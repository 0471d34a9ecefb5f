import type { IssuedFiles } from '../opinion/setIssued.ts';
import type { Piece } from '../piece/piece.ts';
import type { PhotoFolder } from '../record/photos.ts';
import type { InTurn } from '../record/turns.ts';
import type { JobStep } from './jobs.ts';
import type { OpinionAnswer, OpinionQuestion, PlateOf, SetOpinion } from './opinionQuestion.ts';
import { waitingStep } from './waitingStep.ts';
import type { WorkerQueue } from './workerQueue.ts';

/** Sets opinions in a thread, with the pictures of their plates looked up first. */
export function askOpinion(
  queue: WorkerQueue<OpinionQuestion, OpinionAnswer, JobStep>,
  photos: PhotoFolder,
  today: () => Date,
  inTurn: InTurn,
): SetOpinion {
  return async (piece, onStep, { paper, as } = {}) => {
    const plates = await platesOf(piece, photos, onStep);
    const now = today();
    const question = {
      piece,
      plates,
      yearNow: now.getFullYear(),
      madeOn: localDay(now),
      ...(paper === undefined ? {} : { paper }),
      ...(as === undefined ? {} : { as }),
    };
    const answer = await inTurn(
      () => queue.ask(question, onStep),
      (ahead) => onStep(waitingStep(ahead)),
    );
    if (answer instanceof Uint8Array) return answer;
    throw new Error('A draft was asked for, and a revision came.');
  };
}

/** Makes all files of a revision in the same thread. */
export function askRevision(
  queue: WorkerQueue<OpinionQuestion, OpinionAnswer, JobStep>,
  photos: PhotoFolder,
  inTurn: InTurn,
): MakeRevision {
  return async ({ piece, yearNow, madeOn, ...issue }, onStep) => {
    const plates = await platesOf(piece, photos, onStep);
    const answer = await inTurn(
      () => queue.ask({ piece, plates, yearNow, madeOn, issue }, onStep),
      (ahead) => onStep(waitingStep(ahead)),
    );
    if (!(answer instanceof Uint8Array)) return answer;
    throw new Error('A revision was asked for, and a draft came.');
  };
}

/** Makes the files of a revision; writes none. */
export type MakeRevision = (
  of: { piece: Piece; yearNow: number; madeOn: string } & NonNullable<OpinionQuestion['issue']>,
  onStep: (step: JobStep) => void,
) => Promise<IssuedFiles>;

/**
 * The pictures as they are shown, large enough to print; the original where none can be made. A photo that is gone is left out.
 *
 * @throws Error with a sentence where a photo is not as it was taken in
 */
async function platesOf(
  piece: Piece,
  photos: PhotoFolder,
  onStep: (step: JobStep) => void,
): Promise<PlateOf[]> {
  const printed = Object.values(piece.photos).filter(({ asPlate }) => asPlate);
  let done = 0;
  const found = await Promise.all(
    printed.map(async ({ id, sha256, caption, name }) => {
      const picture = await photos.printable(sha256);
      if (!picture.ok)
        throw new Error(
          `The photo “${caption || name}” is not as it was taken in, so nothing was printed: put its file back from a copy of the record, or remove it from this piece.`,
        );
      done += 1;
      onStep({ step: 'Checking the photos', done, total: printed.length });
      return picture.value === undefined ? [] : [{ id, ...picture.value }];
    }),
  );
  return found.flat();
}

/** The day of a moment on this machine: `2026-11-25`. */
export function localDay(now: Date): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
