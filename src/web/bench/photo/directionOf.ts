import type { Point } from '../../../photo/picture.ts';

/** The direction of a line in the picture, degrees from the x axis towards y, which points down; −90 to 90. */
export function directionOf(line: readonly Point[] | undefined): number | undefined {
  const [from, to] = line ?? [];
  if (from === undefined || to === undefined) return undefined;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  if (dx === 0 && dy === 0) return undefined;
  const degrees = (Math.atan2(dy, dx) * 180) / Math.PI;
  return degrees > 90 ? degrees - 180 : degrees <= -90 ? degrees + 180 : degrees;
}
