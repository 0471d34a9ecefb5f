import { transfer } from 'comlink';
import type { CalculationResult } from '../../calculations/define.ts';
import { refuse } from '../../ground/fault.ts';
import type { Point, Region } from '../../photo/picture.ts';
import { openWorker, WorkerEnded } from '../worker/openWorker.ts';
import type { CalculationWorker } from './calculationWorker.ts';
import { cropFor } from './cropFor.ts';
import { edgeRegion, mostEdgePixels } from './edgeRegion.ts';
import type { LookerWorker } from './lookerWorker.ts';

/** A picture that lies open: a small view of it to draw, and the workers that look closer. */
export type OpenPicture = {
  widthPx: number;
  heightPx: number;
  view: ImageBitmap;
  /** The file as it was opened. */
  blob: Blob;
  /** A part of it, drawn at a size. */
  detail(region: Region, widthPx: number, heightPx: number): Promise<ImageBitmap>;
  /** The edge between two places; undefined where they lie too far apart to search. */
  edge(from: Point, to: Point): Promise<Point[] | undefined>;
  /**
   * Runs a calculation on the part of the picture that its input asks about.
   *
   * @param file  the name of the picture in the input
   * @returns undefined where it was canceled before its end
   */
  calculate(id: string, file: string, input: object): Promise<CalculationResult<unknown> | undefined>;
  /** Ends what is being computed. */
  cancel(): void;
  close(): void;
};

/** The long side of the small view: enough for a screen, little enough for a tablet. */
const viewPx = 2048;
const mostPixels = 120_000_000;

/**
 * Opens a picture file in a worker.
 *
 * @throws Error in one sentence that says what to do, where the browser can't read it
 */
export async function openPicture(blob: Blob): Promise<OpenPicture> {
  const looker = openWorker<LookerWorker>(startLooker, (far) => far.hold(blob));
  const calculations = openWorker<CalculationWorker>(startCalculations);
  const { view, widthPx, heightPx } = await looker
    .call((far) => far.view(viewPx))
    .catch(() => {
      throw new Error(
        'This file can’t be read as a picture here: choose a JPEG, PNG or WebP file, or take the photo again.',
      );
    });
  return {
    widthPx,
    heightPx,
    view,
    blob,
    cancel: calculations.end,
    detail: (region, wide, high) => looker.call((far) => far.detail(region, wide, high)),
    async edge(from, to) {
      const around = edgeRegion(from, to, widthPx, heightPx);
      if (around.widthPx * around.heightPx > mostEdgePixels) return undefined;
      return await looker.call((far) => far.edge(from, to)).catch(() => undefined);
    },
    async calculate(id, file, input) {
      const { box, input: within, back } = cropFor(input, { widthPx, heightPx });
      if (box.widthPx * box.heightPx > mostPixels)
        return failed('This takes in more of the picture than can be held: draw smaller regions.');
      const picture = await looker.call((far) => far.pixels(box)).catch(() => undefined);
      if (picture === undefined)
        return failed('The picture could not be read at its full size: close other pages and try again.');
      const handed = transfer(picture, [picture.pixels.buffer as ArrayBuffer]);
      try {
        const result = await calculations.call((far) => far.run(id, within, file, handed));
        return result.ok ? { ok: true, output: back(result.output) } : result;
      } catch (why) {
        if (why instanceof WorkerEnded) return undefined;
        return failed('The calculation broke off: draw a smaller region and try again.');
      }
    },
    close() {
      looker.end();
      calculations.end();
      view.close();
    },
  };
}

function failed(message: string): CalculationResult<unknown> {
  return refuse('photo.unread', message, 'file');
}

function startLooker(): Worker {
  return new Worker(new URL('./lookerWorker.ts', import.meta.url), { type: 'module' });
}

function startCalculations(): Worker {
  return new Worker(new URL('./calculationWorker.ts', import.meta.url), { type: 'module' });
}
