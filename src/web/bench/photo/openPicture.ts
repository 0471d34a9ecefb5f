import type { CalculationResult } from '../../../calculations/define.ts';
import type { Point, Region } from '../../../photo/picture.ts';
import { cropFor } from './cropFor.ts';
import { edgeRegion, mostEdgePixels } from './edgeRegion.ts';
import type { FromLooker, FromReckoner, ToLooker, ToReckoner } from './pictureMessages.ts';

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
   */
  reckon(id: string, file: string, input: object): Promise<CalculationResult<unknown>>;
  /** Leaves off what is being reckoned: its answer never comes. */
  leaveOff(): void;
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
  const looker = new Worker(new URL('./lookerWorker.ts', import.meta.url), { type: 'module' });
  const ask = asker<ToLooker, FromLooker>(looker);
  const desk = { reckoner: undefined as ReturnType<typeof startReckoner> | undefined };
  const opened = await ask({ say: 'open', picture: blob, viewPx });
  if (opened.say !== 'opened') {
    looker.terminate();
    throw new Error(
      'This file can’t be read as a picture here: choose a JPEG, PNG or WebP file, or take the photo again.',
    );
  }
  const { view, widthPx, heightPx } = opened;
  const leaveOff = () => {
    desk.reckoner?.end();
    desk.reckoner = undefined;
  };
  return {
    widthPx,
    heightPx,
    view,
    blob,
    leaveOff,
    async detail(region, wide, high) {
      const word = await ask({ say: 'detail', region, widthPx: wide, heightPx: high });
      if (word.say !== 'detail') throw new Error(whyOf(word));
      return word.bitmap;
    },
    async edge(from, to) {
      const around = edgeRegion(from, to, widthPx, heightPx);
      if (around.widthPx * around.heightPx > mostEdgePixels) return undefined;
      const word = await ask({ say: 'edge', from, to });
      return word.say === 'edge' ? word.points : undefined;
    },
    async reckon(id, file, input) {
      const { box, input: within, back } = cropFor(input, { widthPx, heightPx });
      if (box.widthPx * box.heightPx > mostPixels)
        return failed('This takes in more of the picture than can be held: draw smaller regions.');
      const word = await ask({ say: 'pixels', region: box });
      if (word.say !== 'pixels')
        return failed('The picture could not be read at its full size: close other pages and try again.');
      desk.reckoner ??= startReckoner();
      const result = await desk.reckoner.run(id, within, [[file, word.picture]]);
      if (result === undefined) {
        leaveOff();
        return failed('The reckoning broke off: draw a smaller region and try again.');
      }
      return result.ok ? { ok: true, output: back(result.output) } : result;
    },
    close() {
      looker.terminate();
      leaveOff();
      view.close();
    },
  };
}

function failed(message: string): CalculationResult<unknown> {
  return { ok: false, faults: [{ code: 'photo.unread', path: 'file', message }] };
}

function whyOf(word: FromLooker): string {
  return word.say === 'failed' ? word.why : 'The picture gave another answer than was asked.';
}

function startReckoner() {
  const worker = new Worker(new URL('./reckonerWorker.ts', import.meta.url), { type: 'module' });
  const ask = asker<ToReckoner, FromReckoner>(worker);
  return {
    async run(id: string, input: unknown, pictures: ToReckoner['pictures']) {
      const hand = pictures.map(([, { pixels }]) => pixels.buffer as ArrayBuffer);
      const word = await ask({ id, input, pictures }, hand);
      return word.say === 'result' ? word.result : undefined;
    },
    end: () => worker.terminate(),
  };
}

type Unnumbered<Word> = Word extends unknown ? Omit<Word, 'ask'> : never;

/** Questions and answers by number; words of progress are passed over. A worker that breaks fails all that wait. */
function asker<To extends { ask: number }, From extends { ask: number; say: string }>(worker: Worker) {
  const waiting = new Map<number, (word: From) => void>();
  const counter = { asks: 0 };
  worker.addEventListener('message', ({ data }: MessageEvent<From>) => {
    if (data.say === 'progress') return;
    waiting.get(data.ask)?.(data);
    waiting.delete(data.ask);
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    for (const [ask, resolve] of waiting)
      resolve({ ask, say: 'failed', why: event.message } as unknown as From);
    waiting.clear();
  });
  return (question: Unnumbered<To>, hand: Transferable[] = []) =>
    new Promise<From>((resolve) => {
      const ask = ++counter.asks;
      waiting.set(ask, resolve);
      worker.postMessage({ ...question, ask }, hand);
    });
}
