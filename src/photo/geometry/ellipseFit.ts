import { sum } from '../../ground/statistics.ts';
import type { Point } from '../picture.ts';
import { angleFromZero, directEllipse, type Ellipse } from './ellipseDirect.ts';
import { footOnEllipse } from './ellipseFoot.ts';
import { frameOf, intoFrame, outOfFrame } from './frame.ts';
import { leastSquares, type Residuals } from './leastSquares.ts';

/** Standard uncertainties of an ellipse’s numbers; the angle’s in radians. */
export type EllipseSigma = { centre: Point; semiMajor: number; semiMinor: number; angleRad: number };

/**
 * Which ellipse lies nearest the points, by their distances from it?
 *
 * Method: the direct ellipse to begin with, then Gauss–Newton on the distances, each taken to the nearest point of the ellipse.
 * The doubt comes from the scatter about the ellipse, √(squares / (n − 5)).
 *
 * @param points  Point[n], n ≥ 5
 * @returns undefined where there is no ellipse to be told from a line; sigma undefined where five points leave nothing to judge by
 * @source W. Gander, G. Golub and R. Strebel, BIT 34 (1994), for the problem; the slopes ours
 */
export function fitEllipse(
  points: readonly Point[],
): { ellipse: Ellipse; sigma: EllipseSigma | undefined } | undefined {
  const frame = frameOf(points);
  const framed = points.map((point) => intoFrame(frame, point));
  const start = directEllipse(framed);
  if (start === undefined) return undefined;
  const fit = leastSquares([...start.centre, start.semiMajor, start.semiMinor, start.angleRad], (at) =>
    offEllipse(framed, at),
  );
  if (fit === undefined) return undefined;
  const found = inOrder(fit.parameters);
  if (!(found.semiMajor < 1e4)) return undefined;
  const freedom = points.length - 5;
  const unit = freedom > 0 ? Math.sqrt(fit.squares / freedom) : undefined;
  const sigmaOf = (i: number) => (unit as number) * Math.sqrt(fit.cofactor[i]?.[i] as number);
  const swapped = (fit.parameters[3] as number) > (fit.parameters[2] as number);
  const length = (i: number) => sigmaOf(i) / frame.scale;
  return {
    ellipse: {
      centre: outOfFrame(frame, found.centre),
      semiMajor: found.semiMajor / frame.scale,
      semiMinor: found.semiMinor / frame.scale,
      angleRad: found.angleRad,
    },
    sigma:
      unit === undefined
        ? undefined
        : {
            centre: [length(0), length(1)],
            semiMajor: length(swapped ? 3 : 2),
            semiMinor: length(swapped ? 2 : 3),
            angleRad: sigmaOf(4),
          },
  };
}

/** Root mean square distance of points from an ellipse. */
export function rmsOffEllipse(
  points: readonly Point[],
  { centre, semiMajor, semiMinor, angleRad }: Ellipse,
): number {
  const own = { centre, axes: [semiMajor, semiMinor] as const, angleRad };
  const squares = points.map((point) => footOnEllipse(own, point).off ** 2);
  return Math.sqrt(sum(squares) / points.length);
}

/** The long axis first, whichever of the two came out longer. */
function inOrder(parameters: readonly number[]): Ellipse {
  const [x, y, a, b, angle] = parameters as [number, number, number, number, number];
  return a >= b
    ? { centre: [x, y], semiMajor: a, semiMinor: b, angleRad: angleFromZero(angle) }
    : { centre: [x, y], semiMajor: b, semiMinor: a, angleRad: angleFromZero(angle + Math.PI / 2) };
}

function offEllipse(points: readonly Point[], parameters: readonly number[]): Residuals | undefined {
  const [x, y, a, b, angleRad] = parameters as [number, number, number, number, number];
  if (!(a > 0 && b > 0 && a < 1e9 && b < 1e9)) return undefined;
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const values: number[] = [];
  const jacobian: number[][] = [];
  for (const point of points) {
    const { at, off } = footOnEllipse({ centre: [x, y], axes: [a, b], angleRad }, point);
    const [ct, st] = [Math.cos(at), Math.sin(at)];
    const size = Math.hypot(b * ct, a * st);
    // The outward normal, in the ellipse’s axes and in the picture’s.
    const [nu, nv] = [(b * ct) / size, (a * st) / size];
    const [nx, ny] = [cos * nu - sin * nv, sin * nu + cos * nv];
    values.push(off);
    jacobian.push([-nx, -ny, -nu * ct, -nv * st, nu * b * st - nv * a * ct]);
  }
  return { values, jacobian };
}
