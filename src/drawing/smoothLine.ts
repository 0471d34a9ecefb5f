import type { Curve, Point } from './outline.ts';

/**
 * A smooth line through given points, as a draughtsman lays a spline.
 *
 * Method: centripetal Catmull-Rom, each stretch written as a cubic curve; it passes through every point and makes no
 * loops within a stretch. At a free end the line runs on as it came. At an end on the centre line of a mirrored
 * outline it crosses square, so that both halves join without a kink.
 *
 * @param points  [x, y][n], n ≥ 2: where the line stands now, then the points it goes through
 * @param square  which ends meet the mirror line x = 0
 * @source P. J. Barry and R. N. Goldman 1988 for the spline; parametrisation after Yuksel, Schaefer and Keyser 2009 (from memory)
 */
export function smoothLine(
  points: readonly Point[],
  square: { start: boolean; end: boolean } = { start: false, end: false },
): Curve[] {
  const kept = points.filter(
    (point, index) => index === 0 || apart(point, points[index - 1] as Point) > 1e-6,
  );
  const first = kept[0];
  const last = kept.at(-1);
  const second = kept[1];
  const beforeLast = kept.at(-2);
  if (first === undefined || last === undefined || second === undefined || beforeLast === undefined)
    return [];
  const lead = square.start ? mirrored(second) : runOn(first, second);
  const tail = square.end ? mirrored(beforeLast) : runOn(last, beforeLast);
  const all = [lead, ...kept, tail];
  return kept
    .slice(1)
    .map((_, index) => stretch(all.slice(index, index + 4) as [Point, Point, Point, Point]));
}

function stretch([p0, p1, p2, p3]: readonly [Point, Point, Point, Point]): Curve {
  const [d1, d2, d3] = [Math.sqrt(apart(p0, p1)), Math.sqrt(apart(p1, p2)), Math.sqrt(apart(p2, p3))];
  return [control(p0, p1, p2, d1, d2), control(p3, p2, p1, d3, d2), p2];
}

function control(far: Point, near: Point, ahead: Point, outer: number, inner: number): Point {
  if (outer < 1e-6) return near;
  const weight = 2 * outer * outer + 3 * outer * inner + inner * inner;
  const under = 3 * outer * (outer + inner);
  const along = (axis: 0 | 1) =>
    (outer * outer * ahead[axis] - inner * inner * far[axis] + weight * near[axis]) / under;
  return [along(0), along(1)];
}

function runOn(end: Point, inner: Point): Point {
  return [2 * end[0] - inner[0], 2 * end[1] - inner[1]];
}

function mirrored([x, y]: Point): Point {
  return [-x, y];
}

function apart(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
