import type { Point } from '../picture.ts';

/** Whether an outline comes back to where it began: its ends lie no further apart than its longest step. */
export function isClosed(points: readonly Point[]): boolean {
  if (points.length < 4) return false;
  const [first, last] = [points[0] as Point, points[points.length - 1] as Point];
  let longest = 0;
  for (let at = 1; at < points.length; at++)
    longest = Math.max(longest, apart(points[at - 1] as Point, points[at] as Point));
  return apart(first, last) <= 1.5 * longest;
}

/**
 * An outline as evenly spaced points.
 *
 * @param points  number[n][2], n ≥ 2, in order along the outline
 * @param count   how many points; a closed outline’s last is one step before its first
 * @throws RangeError if the outline has no length
 */
export function evenOutline(points: readonly Point[], count: number, closed: boolean): Point[] {
  const ring = closed ? [...points, points[0] as Point] : points;
  const lengths = [0];
  for (let at = 1; at < ring.length; at++)
    lengths.push((lengths[at - 1] as number) + apart(ring[at - 1] as Point, ring[at] as Point));
  const whole = lengths[lengths.length - 1] as number;
  if (!(whole > 0)) throw new RangeError('evenOutline needs an outline with a length');
  const step = whole / (closed ? count : count - 1);
  let at = 1;
  return Array.from({ length: count }, (_, index): Point => {
    const wanted = Math.min(index * step, whole);
    while (at < ring.length - 1 && (lengths[at] as number) < wanted) at++;
    const [from, to] = [ring[at - 1] as Point, ring[at] as Point];
    const span = (lengths[at] as number) - (lengths[at - 1] as number);
    const share = span > 0 ? (wanted - (lengths[at - 1] as number)) / span : 0;
    return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  });
}

/** Finds the nearest place on one outline again and again: its steps are laid out once, since a fit asks 100 000 times. */
export function nearestFinder(outline: readonly Point[], closed: boolean): (point: Point) => Point {
  const steps = closed ? outline.length : outline.length - 1;
  const laid = new Float64Array(steps * 5);
  for (let index = 0; index < steps; index++) {
    const [ax, ay] = outline[index] as Point;
    const [bx, by] = outline[index + 1 < outline.length ? index + 1 : 0] as Point;
    const [dx, dy] = [bx - ax, by - ay];
    const length = dx * dx + dy * dy;
    laid.set([ax, ay, dx, dy, length > 0 ? 1 / length : 0], index * 5);
  }
  return ([x, y]) => {
    let [nearX, nearY, least] = [x, y, Number.POSITIVE_INFINITY];
    for (let at = 0; at < laid.length; at += 5) {
      const fromX = x - (laid[at] as number);
      const fromY = y - (laid[at + 1] as number);
      const dx = laid[at + 2] as number;
      const dy = laid[at + 3] as number;
      const along = (fromX * dx + fromY * dy) * (laid[at + 4] as number);
      const share = along < 0 ? 0 : Math.min(along, 1);
      const offX = fromX - share * dx;
      const offY = fromY - share * dy;
      const distance = offX * offX + offY * offY;
      if (distance < least) {
        least = distance;
        nearX = x - offX;
        nearY = y - offY;
      }
    }
    return [nearX, nearY];
  };
}

/** How far two points lie apart. */
export function apart([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}
