import type { Point, Region } from '../../photo/picture.ts';

/**
 * How a mark is set: a line has two ends, a region two opposite corners, four corners go round in turn; points on a rim, an outline
 * from end to end and a polygon go on until closed.
 */
export const markKinds = [
  'point',
  'line',
  'angle',
  'region',
  'corners',
  'points',
  'outline',
  'polygon',
] as const;
export type MarkKind = (typeof markKinds)[number];

/** A mark on a picture; its points are in the picture's own pixels, the middle of the first pixel at [0, 0]. */
export type BoardMark = {
  id: string;
  name: string;
  kind: MarkKind;
  points: Point[];
  /** As it is printed, where that is not its place in the list. */
  number?: number;
};

/** A mark that a tool waits for. `least` is how many points make it good where it goes on until closed. */
export type Wanted = { id: string; name: string; kind: MarkKind; least?: number };

const needed: Record<MarkKind, number | undefined> = {
  point: 1,
  line: 2,
  angle: 4,
  region: 2,
  corners: 4,
  points: undefined,
  outline: undefined,
  polygon: undefined,
};

/** True if it goes on until it is closed. */
export function isOpen(kind: MarkKind): boolean {
  return needed[kind] === undefined;
}

/** True once nothing more can be set. */
export function isFull({ kind, points }: Pick<BoardMark, 'kind' | 'points'>): boolean {
  return points.length >= (needed[kind] ?? Number.POSITIVE_INFINITY);
}

/** True if the points set make the mark. */
export function canStand(kind: MarkKind, count: number, least = 3): boolean {
  return count >= (needed[kind] ?? least);
}

/** What to do next to set a mark, in words. */
export function nextTouch({ kind, least = 3 }: Wanted, count: number): string {
  if (kind === 'point') return 'touch the place';
  if (kind === 'polygon') return 'touch corner after corner, then close';
  if (kind === 'line') return count === 0 ? 'touch where it begins' : 'touch where it ends';
  if (kind === 'region')
    return count === 0 ? 'touch one corner, or draw it from corner to corner' : 'touch the opposite corner';
  if (kind === 'corners') return `touch corner ${count + 1} of 4, in turn round the outline`;
  if (kind === 'angle')
    return [
      'touch one end of the first line',
      'touch the other end of the first line',
      'touch one end of the second line, the end that answers the first',
      'touch the other end of the second line',
    ][count] as string;
  if (kind === 'points')
    return count < least ? `touch ${least - count} or more places on its rim` : 'touch more places, or close';
  return count === 0 ? 'touch where it begins' : 'follow the edge by touches, then close';
}

/** A region in whole pixels within the picture; undefined where it has no extent. */
export function regionOf(
  points: readonly Point[] | undefined,
  size: { widthPx: number; heightPx: number },
): Region | undefined {
  const [a, b] = points ?? [];
  if (a === undefined || b === undefined) return undefined;
  const low = (axis: 0 | 1) => Math.max(0, Math.round(Math.min(a[axis], b[axis])));
  const high = (axis: 0 | 1, most: number) => Math.min(most, Math.round(Math.max(a[axis], b[axis])) + 1);
  const [x, y] = [low(0), low(1)];
  const [widthPx, heightPx] = [high(0, size.widthPx) - x, high(1, size.heightPx) - y];
  return widthPx > 1 && heightPx > 1 ? { x, y, widthPx, heightPx } : undefined;
}

/** A point held within the picture, to a tenth of a pixel. */
export function held([x, y]: Point, size: { widthPx: number; heightPx: number }): Point {
  const hold = (at: number, most: number) => Math.round(Math.max(0, Math.min(most - 1, at)) * 10) / 10;
  return [hold(x, size.widthPx), hold(y, size.heightPx)];
}

/** Points moved together, as far as the one nearest an edge of the picture allows, so that the mark keeps its shape. */
export function movedTogether(
  points: readonly Point[],
  by: Point,
  size: { widthPx: number; heightPx: number },
): Point[] {
  const far = (axis: 0 | 1, side: number): number => {
    const at = points.map((point) => point[axis]);
    return Math.max(-Math.min(...at), Math.min(side - 1 - Math.max(...at), by[axis]));
  };
  const [dx, dy] = [far(0, size.widthPx), far(1, size.heightPx)];
  return points.map(([x, y]) => held([x + dx, y + dy], size));
}

/** A place in words: `1204, 880`. */
export function placeWords([x, y]: Point): string {
  return `${Math.round(x)} across, ${Math.round(y)} down`;
}
