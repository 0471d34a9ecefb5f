import { openWorker, type WorkerLike } from '../../worker/openWorker.ts';
import type { CardFound } from './findCard.ts';
import type { VisionWorker } from './visionWorker.ts';

/** The finder of the scale card, for the page. */
export type Vision = {
  /**
   * Looks for the card in a picture file.
   *
   * @param onProgress  told the share done, 0–1
   * @returns pairs ready for `photo.rectify`, or one sentence that says what to do
   */
  findCard(picture: Blob, onProgress?: (share: number) => void): Promise<CardFound>;
  /** Ends the worker and gives its memory back; asked again, it starts anew. Searches under way end as not found. */
  close(): void;
};

const broken: CardFound = {
  found: false,
  message:
    'The search for the card broke off, perhaps for want of memory: try again with a smaller copy of the picture, or mark four points of known place by hand.',
};

/** Opens the finder. Nothing is loaded before it is first asked. */
export function openVision(start: () => WorkerLike = startVisionWorker): Vision {
  const worker = openWorker<VisionWorker>(start);
  return {
    findCard: (picture, onProgress = () => {}) =>
      worker.call((far, heard) => far.findCard(picture, heard(onProgress))).catch(() => broken),
    close: worker.end,
  };
}

function startVisionWorker(): Worker {
  return new Worker(new URL('./visionWorker.ts', import.meta.url), { type: 'module' });
}
