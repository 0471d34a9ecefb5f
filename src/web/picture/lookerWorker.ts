import { expose, transfer } from 'comlink';
import { edgePath } from '../../photo/outlines/twinsEdge.ts';
import type { Picture, Point, Region } from '../../photo/picture.ts';
import { cutPixels } from './cutPixels.ts';
import { edgeRegion } from './edgeRegion.ts';

/** Holds one picture, decoded, off the page's own thread, and gives out a small view of it, details, and pixels to compute with. */
export type LookerWorker = {
  hold(file: Blob): void;
  view(mostPx: number): Promise<{ view: ImageBitmap; widthPx: number; heightPx: number }>;
  detail(region: Region, widthPx: number, heightPx: number): Promise<ImageBitmap>;
  pixels(region: Region): Promise<Picture>;
  edge(from: Point, to: Point): Promise<Point[]>;
};

const page = self as unknown as DedicatedWorkerGlobalScope;
const kept = { file: new Blob(), bitmap: undefined as Promise<ImageBitmap> | undefined, rest: 0 };
/** A large picture takes four bytes a pixel: after so long without a question it is let go, and decoded again when asked for. */
const restMs = 30_000;

expose({
  hold(file) {
    kept.file = file;
  },
  async view(mostPx) {
    const bitmap = await decoded();
    const { width: widthPx, height: heightPx } = bitmap;
    const share = Math.min(1, mostPx / Math.max(widthPx, heightPx));
    const view = await createImageBitmap(bitmap, {
      resizeWidth: Math.max(1, Math.round(widthPx * share)),
      resizeHeight: Math.max(1, Math.round(heightPx * share)),
      resizeQuality: 'medium',
    });
    return transfer({ view, widthPx, heightPx }, [view]);
  },
  async detail(region, wide, high) {
    const bitmap = await decoded();
    const canvas = new OffscreenCanvas(wide, high);
    const pen = canvas.getContext('2d');
    if (pen === null) throw new Error('this browser draws no pictures off the screen');
    pen.imageSmoothingQuality = 'medium';
    pen.drawImage(bitmap, region.x, region.y, region.widthPx, region.heightPx, 0, 0, wide, high);
    const detail = canvas.transferToImageBitmap();
    return transfer(detail, [detail]);
  },
  async pixels(region) {
    const picture = cutPixels(await decoded(), region);
    return transfer(picture, [picture.pixels.buffer as ArrayBuffer]);
  },
  async edge(from, to) {
    const bitmap = await decoded();
    const around = edgeRegion(from, to, bitmap.width, bitmap.height);
    const shift = ([x, y]: readonly [number, number], by: 1 | -1): [number, number] => [
      x + by * around.x,
      y + by * around.y,
    ];
    const region = { ...around, x: 0, y: 0 };
    const path = edgePath(cutPixels(bitmap, around), region, shift(from, -1), shift(to, -1));
    return path.map((at) => shift(at, 1));
  },
} satisfies LookerWorker);

function decoded(): Promise<ImageBitmap> {
  clearTimeout(kept.rest);
  kept.rest = page.setTimeout(async () => {
    const waiting = kept.bitmap;
    kept.bitmap = undefined;
    (await waiting)?.close();
  }, restMs);
  kept.bitmap ??= createImageBitmap(kept.file, { imageOrientation: 'from-image' });
  return kept.bitmap;
}
