import type { Point } from '../picture.ts';

/** A turn, a shift and a scale: p → scale · R(turn) · p + shift. */
export type Motion = { turnRad: number; shift: Point; scale: number };

/**
 * The motion that brings points nearest to their partners.
 *
 * Method: least squares in closed form: the turn is the angle of Σ conj(p) q about the centres, in complex numbers; the
 * scale, where it is free, is |Σ conj(p) q| / Σ |p|².
 *
 * @param from    number[n][2]
 * @param to      number[n][2], partner by partner
 * @param scaled  whether the size may change too
 * @source Umeyama 1991 in two dimensions, from memory
 */
export function nearestMotion(from: readonly Point[], to: readonly Point[], scaled: boolean): Motion {
  const [p, q] = [centre(from), centre(to)];
  let [along, across, size] = [0, 0, 0];
  from.forEach(([x, y], index) => {
    const [u, v] = [x - p[0], y - p[1]];
    const [s, t] = to[index] as Point;
    along += u * (s - q[0]) + v * (t - q[1]);
    across += u * (t - q[1]) - v * (s - q[0]);
    size += u * u + v * v;
  });
  const turnRad = Math.atan2(across, along);
  const scale = scaled && size > 0 ? Math.hypot(along, across) / size : 1;
  const turned = moved(p, { turnRad, shift: [0, 0], scale });
  return { turnRad, shift: [q[0] - turned[0], q[1] - turned[1]], scale };
}

/** Where a motion takes a point. */
export function moved([x, y]: Point, { turnRad, shift, scale }: Motion): Point {
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return [scale * (cos * x - sin * y) + shift[0], scale * (sin * x + cos * y) + shift[1]];
}

/** Where the point was that a motion took here. */
export function movedBack([x, y]: Point, { turnRad, shift, scale }: Motion): Point {
  const [u, v] = [(x - shift[0]) / scale, (y - shift[1]) / scale];
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return [cos * u + sin * v, -sin * u + cos * v];
}

function centre(points: readonly Point[]): Point {
  const sum = points.reduce<[number, number]>(([x, y], [px, py]) => [x + px, y + py], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
}
