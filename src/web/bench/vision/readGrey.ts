import type { GreyPicture } from './greyPicture.ts';

/** Rows that are drawn and read at a time: so that even a very large picture needs little more than its own greys. */
const stripPx = 512;

/**
 * The greys of a picture file, upright, as a browser's worker reads it.
 *
 * Drawn strip by strip: a canvas as large as the picture is more than some tablets give.
 *
 * @throws Error where the browser can't read the file
 */
export async function readGrey(picture: Blob): Promise<GreyPicture> {
  const bitmap = await createImageBitmap(picture, {
    imageOrientation: 'from-image',
    colorSpaceConversion: 'default',
  });
  try {
    const { width: widthPx, height: heightPx } = bitmap;
    const pixels = new Uint8Array(widthPx * heightPx);
    const canvas = new OffscreenCanvas(widthPx, Math.min(stripPx, heightPx));
    const pen = canvas.getContext('2d', { willReadFrequently: true });
    if (pen === null) throw new Error('this browser draws no pictures off the screen');
    for (let top = 0; top < heightPx; top += stripPx) {
      const rows = Math.min(stripPx, heightPx - top);
      pen.drawImage(bitmap, 0, top, widthPx, rows, 0, 0, widthPx, rows);
      const { data } = pen.getImageData(0, 0, widthPx, rows);
      greysOf(data, pixels.subarray(top * widthPx, (top + rows) * widthPx));
    }
    return { widthPx, heightPx, pixels };
  } finally {
    bitmap.close();
  }
}

/** Luma of red, green and blue by the weights of ITU-R BT.601. */
function greysOf(rgba: Uint8ClampedArray, into: Uint8Array): void {
  for (let i = 0, at = 0; i < into.length; i++, at += 4) {
    into[i] =
      (77 * (rgba[at] as number) + 150 * (rgba[at + 1] as number) + 29 * (rgba[at + 2] as number) + 128) >> 8;
  }
}
