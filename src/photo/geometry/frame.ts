import { Matrix, SVD } from 'ml-matrix';
import type { Point } from '../picture.ts';

/** A shift and a scale that bring points near the origin with a mean distance of √2, which keeps the arithmetic exact. */
export type Frame = { centre: Point; scale: number };

/** The frame of some points; scale 1 where they all coincide. */
export function frameOf(points: readonly Point[]): Frame {
  const count = points.length;
  const centre: Point = [
    points.reduce((sum, [x]) => sum + x / count, 0),
    points.reduce((sum, [, y]) => sum + y / count, 0),
  ];
  const spread = points.reduce((sum, [x, y]) => sum + Math.hypot(x - centre[0], y - centre[1]) / count, 0);
  return { centre, scale: spread > 0 ? Math.SQRT2 / spread : 1 };
}

/** A point in a frame. */
export function intoFrame({ centre, scale }: Frame, [x, y]: Point): Point {
  return [(x - centre[0]) * scale, (y - centre[1]) * scale];
}

/** A point of a frame, back where it came from. */
export function outOfFrame({ centre, scale }: Frame, [x, y]: Point): Point {
  return [x / scale + centre[0], y / scale + centre[1]];
}

/** Points spread across their line by less than this share of their spread along it are in one line. */
const leastSpread = 1e-6;

/** Do points of a frame lie other than in one line or one place? */
export function isSpread(framed: readonly Point[]): boolean {
  const sizes = new SVD(new Matrix(framed.map(([x, y]) => [x, y])), { autoTranspose: true }).diagonal;
  return Math.min(...sizes) > leastSpread * Math.max(...sizes);
}
