import type { Point } from '../picture.ts';

/** Distortion of a lens by the radial–tangential model; left-out terms are 0. */
export type LensTerms = { k1: number; k2?: number; k3?: number; p1?: number; p2?: number };

/** Where the principal axis meets the picture, and the length that radii are counted in: its focal length, or half its diagonal. */
export type LensFrame = { centre: Point; unitPx: readonly [number, number] };

/**
 * Where a lens puts a point that a perfect one would put elsewhere.
 *
 * Method: with x, y counted from the centre in the lens's unit and r² = x² + y²,
 * x′ = x(1 + k1 r² + k2 r⁴ + k3 r⁶) + 2 p1 x y + p2 (r² + 2x²), and y′ likewise with p1 (r² + 2y²) + 2 p2 x y.
 *
 * @source D. C. Brown, Close-range camera calibration, Photogrammetric Engineering 37 (1971); form from memory
 */
export function distorted(terms: LensTerms, frame: LensFrame, point: Point): Point {
  const [x, y] = distortedUnits(terms, inUnits(frame, point));
  return [x * frame.unitPx[0] + frame.centre[0], y * frame.unitPx[1] + frame.centre[1]];
}

/**
 * Where a perfect lens would have put a point: the inverse, by Newton's method.
 *
 * @returns undefined where the model folds over, so that no point or more than one would land there
 * @accuracy 1e-12 of the unit, checked by going there and back
 */
export function undistorted(terms: LensTerms, frame: LensFrame, point: Point): Point | undefined {
  const aim = inUnits(frame, point);
  let [x, y] = aim;
  for (let step = 0; step < 50; step++) {
    const [dx, dy] = distortedUnits(terms, [x, y]);
    const [ex, ey] = [dx - aim[0], dy - aim[1]];
    const { xx, xy, yy } = slopes(terms, [x, y]);
    const determinant = xx * yy - xy * xy;
    if (!(xx > 0 && determinant > 0)) return undefined;
    const [sx, sy] = [(yy * ex - xy * ey) / determinant, (xx * ey - xy * ex) / determinant];
    x -= sx;
    y -= sy;
    if (Math.hypot(sx, sy) < 1e-14 * (1 + Math.hypot(x, y)))
      return [x * frame.unitPx[0] + frame.centre[0], y * frame.unitPx[1] + frame.centre[1]];
  }
  return undefined;
}

function inUnits({ centre, unitPx }: LensFrame, [x, y]: Point): Point {
  return [(x - centre[0]) / unitPx[0], (y - centre[1]) / unitPx[1]];
}

function distortedUnits({ k1, k2 = 0, k3 = 0, p1 = 0, p2 = 0 }: LensTerms, [x, y]: Point): Point {
  const r2 = x * x + y * y;
  const radial = 1 + r2 * (k1 + r2 * (k2 + r2 * k3));
  return [
    x * radial + 2 * p1 * x * y + p2 * (r2 + 2 * x * x),
    y * radial + p1 * (r2 + 2 * y * y) + 2 * p2 * x * y,
  ];
}

/** How the distorted point moves with the point: a symmetric matrix. */
export function slopes({ k1, k2 = 0, k3 = 0, p1 = 0, p2 = 0 }: LensTerms, [x, y]: Point) {
  const r2 = x * x + y * y;
  const radial = 1 + r2 * (k1 + r2 * (k2 + r2 * k3));
  const growth = 2 * (k1 + r2 * (2 * k2 + 3 * r2 * k3));
  return {
    xx: radial + growth * x * x + 2 * p1 * y + 6 * p2 * x,
    xy: growth * x * y + 2 * p1 * x + 2 * p2 * y,
    yy: radial + growth * y * y + 6 * p1 * y + 2 * p2 * x,
  };
}
