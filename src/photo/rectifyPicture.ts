import type { Homography } from './homography.ts';
import type { Picture } from './picture.ts';

/** A rectangle of the plane, in mm. */
export type PlaneArea = { leftMm: number; topMm: number; widthMm: number; heightMm: number };

/** More pixels than this are not drawn at once. */
const mostPixels = 100_000_000;

/**
 * How would a part of the plane look, seen squarely?
 *
 * Method: each pixel of the new picture is looked up in the old, between its four nearest pixels. What lies outside the old picture
 * or beyond the horizon is black (and clear, where there is opacity). Where the new picture is coarser than the old, fine patterns
 * can show falsely.
 *
 * @param toPicture  from the plane in mm to the picture, as `photo.rectify` gives it
 * @param area       what is to be drawn
 * @param pxPerMm    how fine, > 0
 * @throws RangeError  if the new picture would have no pixels, or over 100 million
 */
export function rectifyPicture(
  picture: Picture,
  toPicture: Homography,
  { leftMm, topMm, widthMm, heightMm }: PlaneArea,
  pxPerMm: number,
): Picture {
  const [wide, high] = [Math.round(widthMm * pxPerMm), Math.round(heightMm * pxPerMm)];
  if (!(wide > 0 && high > 0 && wide * high <= mostPixels))
    throw new RangeError(`rectifyPicture draws 1 to ${mostPixels} pixels, got ${wide} × ${high}`);
  const { channels, pixels: from, widthPx, heightPx } = picture;
  const pixels = new Uint8Array(wide * high * channels);
  const [[a, b, c], [d, e, f], [g, h, i]] = toPicture;
  const side = Math.sign(g * (leftMm + widthMm / 2) + h * (topMm + heightMm / 2) + i);
  const step = 1 / pxPerMm;
  const down = widthPx * channels;
  for (let row = 0, into = 0; row < high; row++) {
    const y = topMm + (row + 0.5) * step;
    for (let column = 0; column < wide; column++, into += channels) {
      const x = leftMm + (column + 0.5) * step;
      const w = g * x + h * y + i;
      const u = (a * x + b * y + c) / w;
      const v = (d * x + e * y + f) / w;
      if (!(w * side > 0 && u >= 0 && v >= 0 && u <= widthPx - 1 && v <= heightPx - 1)) continue;
      const left = Math.min(Math.floor(u), widthPx - 2);
      const top = Math.min(Math.floor(v), heightPx - 2);
      const [fx, fy] = [u - left, v - top];
      const at = top * down + left * channels;
      for (let k = 0; k < channels; k++) {
        const p = at + k;
        const above = (from[p] as number) * (1 - fx) + (from[p + channels] as number) * fx;
        const below = (from[p + down] as number) * (1 - fx) + (from[p + down + channels] as number) * fx;
        pixels[into + k] = above * (1 - fy) + below * fy + 0.5;
      }
    }
  }
  return { widthPx: wide, heightPx: high, channels, pixels };
}
