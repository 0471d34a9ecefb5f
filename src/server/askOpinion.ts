import type { Piece } from '../piece/piece.ts';
import type { PhotoFolder } from '../record/photos.ts';
import type { JobStep } from './jobs.ts';
import type { SetOpinion } from './opinionRoutes.ts';
import type { OpinionQuestion } from './opinionWorker.ts';
import type { WorkerDesk } from './workerDesk.ts';

/** Where the picture of a plate is, by the photo's id. */
export type PlateOf = { id: string; mediaType: string; path: string };

/** Sets opinions in a thread, with the pictures of their plates looked up first. */
export function askOpinion(
  desk: WorkerDesk<OpinionQuestion, Uint8Array, JobStep>,
  photos: PhotoFolder,
  today: () => Date,
): SetOpinion {
  return async (piece, onStep) => {
    const plates = await platesOf(piece, photos);
    const now = today();
    return desk.ask({ piece, plates, yearNow: now.getFullYear(), madeOn: localDay(now) }, onStep);
  };
}

/** The originals that can be printed; of a HEIC the JPEG that it is shown as. A photo whose bytes are gone is left out. */
async function platesOf(piece: Piece, photos: PhotoFolder): Promise<PlateOf[]> {
  const found = await Promise.all(
    Object.values(piece.photos).map(async ({ id, sha256, asPlate }) => {
      const original = asPlate ? await photos.original(sha256) : undefined;
      if (original === undefined) return [];
      if (original.mediaType !== 'image/heic') return [{ id, ...original }];
      const path = await photos.shown(sha256, 'view');
      return path === undefined ? [] : [{ id, path, mediaType: 'image/jpeg' }];
    }),
  );
  return found.flat();
}

function localDay(now: Date): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
