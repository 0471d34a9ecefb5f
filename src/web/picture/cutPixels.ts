import type { Picture, Region } from '../../photo/picture.ts';

/** Rows that are drawn and read at a time: a canvas as large as a large picture is more than some tablets give. */
const stripPx = 512;

/** The pixels of a rectangle of a decoded picture, at its full size. */
export function cutPixels(bitmap: ImageBitmap, { x, y, widthPx, heightPx }: Region): Picture {
  const pixels = new Uint8ClampedArray(widthPx * heightPx * 4);
  const canvas = new OffscreenCanvas(widthPx, Math.min(stripPx, heightPx));
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (pen === null) throw new Error('this browser draws no pictures off the screen');
  for (let top = 0; top < heightPx; top += stripPx) {
    const rows = Math.min(stripPx, heightPx - top);
    pen.clearRect(0, 0, widthPx, rows);
    pen.drawImage(bitmap, x, y + top, widthPx, rows, 0, 0, widthPx, rows);
    pixels.set(pen.getImageData(0, 0, widthPx, rows).data, top * widthPx * 4);
  }
  return { widthPx, heightPx, channels: 4, pixels };
}
