import type { Point } from '../picture.ts';
import type { Measured } from './planeMeasure.ts';

/** One length that is known: its two marks, and how long it truly is. */
export type KnownLength = {
  points: readonly [Point, Point];
  lengthMm: number;
  sigmaMm: number;
};

/**
 * How long is a line beside one known length, and how sure? Only for a plane that faces the camera squarely: perspective is
 * not corrected.
 *
 * Method: rule of three; the doubt of four marks and of the known length, to first order.
 *
 * @returns undefined where both marks of the known length coincide
 */
export function lengthByKnown(
  known: KnownLength,
  marks: readonly [Point, Point],
  sigmaPx: number,
): Measured | undefined {
  const [knownPx, linePx] = [spanOf(known.points), spanOf(marks)];
  if (!(knownPx > 0)) return undefined;
  const perPx = known.lengthMm / knownPx;
  const value = linePx * perPx;
  const ofLine = Math.SQRT2 * sigmaPx * perPx;
  const ofKnown = Math.hypot(
    (Math.SQRT2 * sigmaPx * value) / knownPx,
    (known.sigmaMm * value) / known.lengthMm,
  );
  return { value, sigma: Math.hypot(ofLine, ofKnown), fromMarks: ofLine, fromPairs: ofKnown };
}

function spanOf([a, b]: readonly [Point, Point]): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}
