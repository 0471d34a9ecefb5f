import type { Point, Region } from '../../photo/picture.ts';

/** What is searched for an edge between two clicks: their surroundings, a third of their distance to every side and no less than 24 pixels. */
export function edgeRegion(from: Point, to: Point, widthPx: number, heightPx: number): Region {
  const about = Math.max(24, Math.hypot(to[0] - from[0], to[1] - from[1]) / 3);
  const low = (axis: 0 | 1) => Math.max(0, Math.floor(Math.min(from[axis], to[axis]) - about));
  const high = (axis: 0 | 1, most: number) =>
    Math.min(most, Math.ceil(Math.max(from[axis], to[axis]) + about) + 1);
  const [x, y] = [low(0), low(1)];
  return { x, y, widthPx: high(0, widthPx) - x, heightPx: high(1, heightPx) - y };
}

/** Two clicks further apart than this would search too much: a straight line is drawn between them, and the examiner told. */
export const mostEdgePixels = 1_500_000;
