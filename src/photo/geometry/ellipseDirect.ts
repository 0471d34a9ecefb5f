import { EVD, inverse, Matrix } from 'ml-matrix';
import type { Point } from '../picture.ts';
import { frameOf, intoFrame, isSpread, outOfFrame } from './frame.ts';

/** An ellipse: half its long and short axis, and the angle of the long one from the x axis, from 0 to below π, towards the y axis. */
export type Ellipse = { centre: Point; semiMajor: number; semiMinor: number; angleRad: number };

/** An ellipse flatter than this is taken for a line. */
const flattest = 1e-5;

/**
 * Which ellipse makes the algebraic error smallest?
 *
 * Method: a conic ax² + bxy + cy² + dx + ey + f under 4ac − b² = 1, which only ellipses meet, in the numerically stable form that
 * solves for the quadratic part by itself. In coordinates about the middle of the points, scaled to order 1; the answer does not
 * hang on that.
 *
 * @param points  Point[n], n ≥ 5
 * @returns undefined where the points lie on no ellipse that could be told from a line
 * @source A. Fitzgibbon, M. Pilu and R. Fisher, IEEE PAMI 21 (1999); R. Halíř and J. Flusser, WSCG (1998); from memory
 */
export function directEllipse(points: readonly Point[]): Ellipse | undefined {
  const frame = frameOf(points);
  const framed = points.map((point) => intoFrame(frame, point));
  if (!isSpread(framed)) return undefined;
  const quadratic = new Matrix(framed.map(([x, y]) => [x * x, x * y, y * y]));
  const linear = new Matrix(framed.map(([x, y]) => [x, y, 1]));
  const s1 = quadratic.transpose().mmul(quadratic);
  const s2 = quadratic.transpose().mmul(linear);
  const s3 = linear.transpose().mmul(linear);
  try {
    const toLinear = inverse(s3).mmul(s2.transpose()).mul(-1);
    const reduced = s1.add(s2.mmul(toLinear));
    const [r1, r2, r3] = reduced.to2DArray() as [number[], number[], number[]];
    const turned = new Matrix([
      r3.map((value) => value / 2),
      r2.map((value) => -value),
      r1.map((value) => value / 2),
    ]);
    const vectors = new EVD(turned).eigenvectorMatrix;
    for (const column of [0, 1, 2]) {
      const [a, b, c] = vectors.getColumn(column) as [number, number, number];
      if (!(4 * a * c - b * b > 0)) continue;
      const rest = toLinear.mmul(Matrix.columnVector([a, b, c])).to1DArray() as [number, number, number];
      const found = ellipseOf([a, b, c, ...rest]);
      return (
        found && {
          centre: outOfFrame(frame, found.centre),
          semiMajor: found.semiMajor / frame.scale,
          semiMinor: found.semiMinor / frame.scale,
          angleRad: found.angleRad,
        }
      );
    }
  } catch {
    // The points lie in one line: a matrix has no inverse.
  }
  return undefined;
}

/** Centre, axes and angle of a conic; undefined where it is no ellipse with points on it. */
function ellipseOf([a, b, c, d, e, f]: [number, number, number, number, number, number]):
  | Ellipse
  | undefined {
  const determinant = 4 * a * c - b * b;
  const [x, y] = [(b * e - 2 * c * d) / determinant, (b * d - 2 * a * e) / determinant];
  const atCentre = f + (d * x + e * y) / 2;
  const [middle, half] = [(a + c) / 2, Math.hypot((a - c) / 2, b / 2)];
  const squares = [middle - half, middle + half].map((root) => -atCentre / root);
  const [one, other] = squares.map(Math.sqrt) as [number, number];
  const [semiMajor, semiMinor] = [Math.max(one, other), Math.min(one, other)];
  if (!(semiMinor > flattest * semiMajor) || !Number.isFinite(semiMajor)) return undefined;
  // The long axis belongs to the root that is smaller in size.
  const sign = middle < 0 ? -1 : 1;
  const angle = Math.atan2(-sign * b, sign * (c - a)) / 2;
  return { centre: [x, y], semiMajor, semiMinor, angleRad: angleFromZero(angle) };
}

/** The same direction of an axis as an angle from 0 to below π. */
export function angleFromZero(angle: number): number {
  const turned = angle - Math.PI * Math.floor(angle / Math.PI);
  return turned >= Math.PI ? 0 : turned;
}
