import type { Photo } from '../../../piece/photo.ts';

type Size = Pick<Photo, 'widthPx' | 'heightPx'>;
export type Place = [number, number];

/** Places of a photo's marks, which are shares of its width and height, in its pixels: the middle of the first stands at [0, 0]. */
export function inPixels(
  places: readonly (readonly [number, number])[],
  { widthPx, heightPx }: Size,
): Place[] {
  return places.map(([x, y]) => [x * widthPx - 0.5, y * heightPx - 0.5]);
}

/** Pixels as shares of the photo's width and height, held inside it, to a ten thousandth. */
export function inShares(
  points: readonly (readonly [number, number])[],
  { widthPx, heightPx }: Size,
): Place[] {
  const share = (at: number, of: number) =>
    Math.round(Math.max(0, Math.min(1, (at + 0.5) / of)) * 10_000) / 10_000;
  return points.map(([x, y]) => [share(x, widthPx), share(y, heightPx)]);
}

/** A place in words: `42 % across, 31 % down`. */
export function placeWords(place: readonly [number, number]): string {
  return `${Math.round(place[0] * 100)} % across, ${Math.round(place[1] * 100)} % down`;
}
