import type { Point } from '../picture.ts';

/** An ellipse by its two half axes, either of which may be the longer, and the angle of the first. */
export type OwnAxes = { centre: Point; axes: readonly [number, number]; angleRad: number };

/** The nearest point of an ellipse: where on it (the angle of its parametric form), and how far off, positive outside. */
export type Foot = { at: number; off: number };

/**
 * Which point of an ellipse lies nearest a given one, and how far off?
 *
 * Method: in the first quadrant of the ellipse's own axes the nearest point is fixed by one root of a falling function, found
 * by Newton's method inside a bracket that is halved where a step would leave it.
 *
 * @source D. Eberly, Distance from a point to an ellipse (2013); from memory
 */
export function footOnEllipse({ centre, axes: [a, b], angleRad }: OwnAxes, [px, py]: Point): Foot {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const [dx, dy] = [px - centre[0], py - centre[1]];
  const [u, v] = [cos * dx + sin * dy, cos * dy - sin * dx];
  const [x, y] =
    a >= b
      ? nearestInQuadrant(a, b, Math.abs(u), Math.abs(v))
      : (nearestInQuadrant(b, a, Math.abs(v), Math.abs(u)).reverse() as [number, number]);
  const at = Math.atan2((v < 0 ? -y : y) / b, (u < 0 ? -x : x) / a);
  const inside = (u / a) ** 2 + (v / b) ** 2 < 1;
  const off = Math.hypot(Math.abs(u) - x, Math.abs(v) - y);
  return { at, off: inside ? -off : off };
}

/** a ≥ b > 0; u, v ≥ 0. */
function nearestInQuadrant(a: number, b: number, u: number, v: number): [number, number] {
  if (v < 1e-14 * b) {
    const along = (a * u) / (a * a - b * b);
    return along < 1 ? [a * along, b * Math.sqrt(1 - along * along)] : [a, 0];
  }
  if (u === 0) return [0, b];
  // The root in t of (ratio·z0 / (t + beyond))² + (z1 / t)² = 1, which falls in t.
  const [ratio, z0, z1] = [(a / b) ** 2, u / a, v / b];
  const beyond = ratio - 1;
  let [low, high] = [z1, Math.hypot(ratio * z0, z1)];
  let t = (low + high) / 2;
  for (let step = 0; step < 200; step++) {
    const [r0, r1] = [(ratio * z0) / (t + beyond), z1 / t];
    const value = r0 * r0 + r1 * r1 - 1;
    if (value > 0) low = t;
    else high = t;
    const slope = (-2 * r0 * r0) / (t + beyond) - (2 * r1 * r1) / t;
    const next = t - value / slope;
    const taken = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(taken - t) <= 1e-16 * t || value === 0) break;
    t = taken;
  }
  return [(ratio * u) / (t + beyond), v / t];
}
