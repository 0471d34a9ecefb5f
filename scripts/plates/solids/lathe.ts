import type { Face, Look } from '../render/scene.ts';
import { cross, minus, unit, type Vec } from '../render/vector.ts';
import type { Point } from './shapes.ts';

/**
 * A solid turned about the y axis.
 *
 * @param profile  points [radius, y] from below upward
 * @param uneven   changes the radius at a share of the turn, for what was riven and not turned
 */
export function lathe(
  profile: readonly Point[],
  look: Look,
  sides = 28,
  uneven = (_share: number) => 1,
): Face[] {
  const place = ([r, y]: Point, i: number): Vec => {
    const turn = (2 * Math.PI * i) / sides;
    const far = r * uneven((i % sides) / sides);
    return [far * Math.cos(turn), y, -far * Math.sin(turn)];
  };
  return profile.slice(0, -1).flatMap((low, k) => {
    const high = profile[k + 1] as Point;
    return Array.from({ length: sides }, (_, i) => [
      place(low, i),
      place(low, i + 1),
      place(high, i + 1),
      place(high, i),
    ])
      .map((corners) => corners.filter((one, n) => n === 0 || apart(one, corners[n - 1] as Vec)))
      .map((corners) => (apart(corners[0] as Vec, corners.at(-1) as Vec) ? corners : corners.slice(0, -1)))
      .filter((corners) => corners.length > 2)
      .map((corners): Face => {
        const [a, b, c] = corners as [Vec, Vec, Vec];
        return { loops: [corners], normal: unit(cross(minus(b, a), minus(c, a))), look };
      });
  });
}

const apart = (a: Vec, b: Vec) => Math.hypot(...minus(a, b)) > 1e-6;
