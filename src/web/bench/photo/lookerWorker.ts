import { edgePath } from '../../../photo/outlines/twinsEdge.ts';
import { cutPixels } from './cutPixels.ts';
import { edgeRegion } from './edgeRegion.ts';
import type { FromLooker, ToLooker } from './pictureMessages.ts';

/** Holds one picture, decoded, off the page's own thread, and gives out a small view of it, details, and pixels to reckon with. */
const page = self as unknown as DedicatedWorkerGlobalScope;
const desk: { picture: Blob | undefined; bitmap: Promise<ImageBitmap> | undefined; rest: number } = {
  picture: undefined,
  bitmap: undefined,
  rest: 0,
};
/** A large picture takes four bytes a pixel: after so long without a question it is let go, and decoded again when asked for. */
const restMs = 30_000;

page.addEventListener('message', async ({ data }: MessageEvent<ToLooker>) => {
  try {
    if (data.say === 'open') desk.picture = data.picture;
    const bitmap = await decoded();
    const [word, hand] = await answer(data, bitmap);
    page.postMessage(word, hand);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    page.postMessage({ ask: data.ask, say: 'failed', why } satisfies FromLooker);
  }
});

function decoded(): Promise<ImageBitmap> {
  clearTimeout(desk.rest);
  desk.rest = page.setTimeout(async () => {
    const waiting = desk.bitmap;
    desk.bitmap = undefined;
    (await waiting)?.close();
  }, restMs);
  if (desk.picture === undefined) throw new Error('no picture was opened');
  desk.bitmap ??= createImageBitmap(desk.picture, { imageOrientation: 'from-image' });
  return desk.bitmap;
}

async function answer(asked: ToLooker, bitmap: ImageBitmap): Promise<[FromLooker, Transferable[]]> {
  const { ask } = asked;
  if (asked.say === 'open') {
    const { width: widthPx, height: heightPx } = bitmap;
    const share = Math.min(1, asked.viewPx / Math.max(widthPx, heightPx));
    const view = await createImageBitmap(bitmap, {
      resizeWidth: Math.max(1, Math.round(widthPx * share)),
      resizeHeight: Math.max(1, Math.round(heightPx * share)),
      resizeQuality: 'medium',
    });
    return [{ ask, say: 'opened', view, widthPx, heightPx }, [view]];
  }
  if (asked.say === 'detail') {
    const { x, y, widthPx, heightPx } = asked.region;
    const canvas = new OffscreenCanvas(asked.widthPx, asked.heightPx);
    const pen = canvas.getContext('2d');
    if (pen === null) throw new Error('this browser draws no pictures off the screen');
    pen.imageSmoothingQuality = 'medium';
    pen.drawImage(bitmap, x, y, widthPx, heightPx, 0, 0, asked.widthPx, asked.heightPx);
    const detail = canvas.transferToImageBitmap();
    return [{ ask, say: 'detail', bitmap: detail }, [detail]];
  }
  if (asked.say === 'pixels') {
    const picture = cutPixels(bitmap, asked.region);
    return [{ ask, say: 'pixels', picture }, [picture.pixels.buffer as ArrayBuffer]];
  }
  const around = edgeRegion(asked.from, asked.to, bitmap.width, bitmap.height);
  const [left, top] = [around.x, around.y];
  const shift = ([x, y]: readonly [number, number], by: 1 | -1): [number, number] => [
    x + by * left,
    y + by * top,
  ];
  const region = { ...around, x: 0, y: 0 };
  const path = edgePath(cutPixels(bitmap, around), region, shift(asked.from, -1), shift(asked.to, -1));
  return [{ ask, say: 'edge', points: path.map(([x, y]) => shift([x, y], 1)) }, []];
}
