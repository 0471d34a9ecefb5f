import { sum } from '../../ground/statistics.ts';
import type { Point } from '../picture.ts';
import { algebraicCircle, type Circle } from './circleAlgebraic.ts';
import { frameOf, intoFrame, outOfFrame } from './frame.ts';
import { leastSquares, type Residuals } from './leastSquares.ts';

/** A circle with how far its points lie off and how firm it is; lengths in the unit of the points. */
export type FittedCircle = Circle & {
  /** Root mean square distance of the points from the circle. */
  residualRms: number;
  /** Standard uncertainties of radius and centre; undefined where three points leave nothing to judge by and none was given. */
  sigma: number | undefined;
  sigmaCentre: Point | undefined;
};

/**
 * Which circle lies nearest the points, by their distances from it?
 *
 * Method: Taubin's algebraic circle to begin with, then Gauss–Newton on the distances. The doubt comes from the scatter of the
 * points about the circle, √(squares / (n − 3)), but is no less than a doubt of the points that is known beforehand.
 *
 * @param points      Point[n], n ≥ 3
 * @param sigmaPoint  standard uncertainty of a point in each direction, where known
 * @returns undefined where the points lie so nearly in one line that no circle can be told
 * @source W. Gander, G. Golub and R. Strebel, BIT 34 (1994); from memory
 */
export function fitCircle(points: readonly Point[], sigmaPoint?: number): FittedCircle | undefined {
  const frame = frameOf(points);
  const framed = points.map((point) => intoFrame(frame, point));
  const start = algebraicCircle(framed, 'taubin');
  if (start === undefined) return undefined;
  const fit = leastSquares([...start.centre, start.radius], (at) => offCircle(framed, at));
  if (fit === undefined) return undefined;
  const [x, y, radius] = fit.parameters as [number, number, number];
  if (!(radius > 0 && radius < 1e6)) return undefined;
  const freedom = points.length - 3;
  const scatter = freedom > 0 ? Math.sqrt(fit.squares / freedom) : undefined;
  const given = sigmaPoint === undefined ? undefined : sigmaPoint * frame.scale;
  const unit = scatter === undefined ? given : Math.max(scatter, given ?? 0);
  const sigmaOf = (i: number) => ((unit as number) * Math.sqrt(fit.cofactor[i]?.[i] as number)) / frame.scale;
  return {
    centre: outOfFrame(frame, [x, y]),
    radius: radius / frame.scale,
    residualRms: Math.sqrt(fit.squares / points.length) / frame.scale,
    sigma: unit === undefined ? undefined : sigmaOf(2),
    sigmaCentre: unit === undefined ? undefined : [sigmaOf(0), sigmaOf(1)],
  };
}

function offCircle(points: readonly Point[], at: readonly number[]): Residuals | undefined {
  const [x, y, radius] = at as [number, number, number];
  const values: number[] = [];
  const jacobian: number[][] = [];
  for (const [px, py] of points) {
    const [dx, dy] = [px - x, py - y];
    const away = Math.hypot(dx, dy);
    if (!(away > 0)) return undefined;
    values.push(away - radius);
    jacobian.push([-dx / away, -dy / away, -1]);
  }
  return { values, jacobian };
}

/** Root mean square distance of points from a circle. */
export function rmsOffCircle(points: readonly Point[], { centre, radius }: Circle): number {
  const squares = points.map(([x, y]) => (Math.hypot(x - centre[0], y - centre[1]) - radius) ** 2);
  return Math.sqrt(sum(squares) / points.length);
}
