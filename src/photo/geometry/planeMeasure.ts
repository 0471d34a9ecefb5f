import type { Point } from '../picture.ts';
import { inverted, normalMatrix } from './leastSquares.ts';
import {
  type Frames,
  framesOf,
  located,
  type Pairs,
  type PlaneView,
  parametersOf,
  projectionSlopes,
} from './planeView.ts';
import { residualsOf } from './rectify.ts';

/** What a measure hangs on: the view, how sure the marks are, and the pairs the view was fitted to. */
export type MeasureGround = {
  view: PlaneView;
  /** Standard uncertainty of a measured mark, in each direction, in pixels. */
  sigmaPx: number;
  /** The pairs, with how sure their marks (in each direction) and their places are; left out, the view counts as exact. */
  pairs?: Pairs & { sigmaPx: number; sigmaMm: number };
};

/** A value with its standard uncertainty, and the shares of it: from the measured marks, and from the pairs behind the view. */
export type Measured = { value: number; sigma: number; fromMarks: number; fromPairs: number };

/** A mark of the measure, where it lies in the plane, and how that moves: with the mark, and with the view. */
type Placed = { place: Point; byMark: [Point, Point]; byParameter: [number[], number[]] };

/**
 * How long is the line between two marks, in the plane, and how sure?
 *
 * Method: both marks are carried to the plane. To first order the doubt of the marks is carried through the slopes of that map;
 * the doubt of the pairs through the slopes of the fitted view, (JᵀJ)⁻¹Jᵀ. Where the pairs lie further off than their stated
 * doubt explains, their doubt is raised until it does.
 *
 * @returns undefined where a mark lies on or beyond the horizon
 * @source JCGM 100:2008 (GUM), 5.2; the slopes ours
 */
export function lengthInPlane(ground: MeasureGround, marks: readonly [Point, Point]): Measured | undefined {
  const [a, b] = placedMarks(ground, marks) ?? [];
  if (a === undefined || b === undefined) return undefined;
  const [dx, dy] = [b.place[0] - a.place[0], b.place[1] - a.place[1]];
  const value = Math.hypot(dx, dy);
  const along: Point = value > 0 ? [dx / value, dy / value] : [1, 0];
  const weights: [Placed, Point][] = [
    [a, [-along[0], -along[1]]],
    [b, along],
  ];
  return measured(value, ground, weights);
}

/**
 * Which angle do two lines make in the plane, each through two marks, and how sure? Between 0 and 180 degrees, as from the
 * first mark to the second of each line; in radians.
 *
 * Method and source as for `lengthInPlane`.
 */
export function angleInPlane(
  ground: MeasureGround,
  first: readonly [Point, Point],
  second: readonly [Point, Point],
): Measured | undefined {
  const [a, b, c, d] = placedMarks(ground, [...first, ...second]) ?? [];
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  const turn = angleOf(c.place, d.place) - angleOf(a.place, b.place);
  const wrapped = Math.atan2(Math.sin(turn), Math.cos(turn));
  const sign = wrapped < 0 ? -1 : 1;
  const [ofFirst, ofSecond] = [angleSlope(a.place, b.place), angleSlope(c.place, d.place)];
  const times = ([x, y]: Point, by: number): Point => [x * by, y * by];
  return measured(Math.abs(wrapped), ground, [
    [a, times(ofFirst, sign)],
    [b, times(ofFirst, -sign)],
    [c, times(ofSecond, -sign)],
    [d, times(ofSecond, sign)],
  ]);
}

function angleOf([ax, ay]: Point, [bx, by]: Point): number {
  return Math.atan2(by - ay, bx - ax);
}

/** How the direction from a to b turns as b moves. */
function angleSlope([ax, ay]: Point, [bx, by]: Point): Point {
  const square = (bx - ax) ** 2 + (by - ay) ** 2;
  return [-(by - ay) / square, (bx - ax) / square];
}

/** Adds up the doubt of a value that moves with its marks by these weights. */
function measured(value: number, ground: MeasureGround, weights: readonly [Placed, Point][]): Measured {
  const fromMarks =
    ground.sigmaPx *
    Math.hypot(
      ...weights.flatMap(([{ byMark }, [wx, wy]]) =>
        [0, 1].map((k) => wx * (byMark[0][k] as number) + wy * (byMark[1][k] as number)),
      ),
    );
  const count = weights[0]?.[0].byParameter[0].length ?? 0;
  const slope = Array.from({ length: count }, (_, p) =>
    weights.reduce(
      (sum, [{ byParameter }, [wx, wy]]) =>
        sum + wx * (byParameter[0][p] as number) + wy * (byParameter[1][p] as number),
      0,
    ),
  );
  const fromPairs = ground.pairs === undefined ? 0 : doubtOfPairs(ground.view, ground.pairs, slope);
  return { value, sigma: Math.hypot(fromMarks, fromPairs), fromMarks, fromPairs };
}

function placedMarks(ground: MeasureGround, marks: readonly Point[]): Placed[] | undefined {
  const { view, pairs } = ground;
  const places = marks.map((mark) => located(view, mark));
  if (places.some((place) => place === undefined)) return undefined;
  const frames = framesOf(pairs ?? { image: marks, world: places as Point[] });
  const parameters = parametersOf(view, frames);
  const placed = (places as Point[]).map((place) => placedAt(view, parameters, frames, place));
  return placed.some((each) => each === undefined) ? undefined : (placed as Placed[]);
}

function placedAt(
  view: PlaneView,
  parameters: readonly number[],
  frames: Frames,
  place: Point,
): Placed | undefined {
  const found = projectionSlopes(parameters, frames, view.lens?.frame, place);
  if (found === undefined) return undefined;
  const [[a, b], [c, d]] = found.slopes.byPlace as [[number, number], [number, number]];
  const determinant = a * d - b * c;
  // From the image frame to the plane's own unit.
  const toPlane = 1 / (determinant * frames.world.scale);
  const back: [Point, Point] = [
    [d * toPlane, -b * toPlane],
    [-c * toPlane, a * toPlane],
  ];
  const [ofX, ofY] = found.slopes.byParameter;
  const moved = ([bx, by]: Point) => ofX.map((value, p) => -(bx * value + by * (ofY[p] as number)));
  const perPx = frames.image.scale;
  return {
    place,
    byMark: [
      [back[0][0] * perPx, back[0][1] * perPx],
      [back[1][0] * perPx, back[1][1] * perPx],
    ],
    byParameter: [moved(back[0]), moved(back[1])],
  };
}

/** The doubt that the pairs hand on to a value that moves with the view's numbers by this slope. */
function doubtOfPairs(
  view: PlaneView,
  pairs: Pairs & { sigmaPx: number; sigmaMm: number },
  slope: readonly number[],
): number {
  const frames = framesOf(pairs);
  const parameters = parametersOf(view, frames);
  const lens = view.lens?.frame;
  const residuals = residualsOf(parameters, pairs, frames, lens);
  const cofactor = residuals && inverted(normalMatrix(residuals.jacobian));
  if (residuals === undefined || cofactor === undefined) return Number.POSITIVE_INFINITY;
  const solved = cofactor.map((row) => row.reduce((sum, value, p) => sum + value * (slope[p] as number), 0));
  let variance = 0;
  let expectedSquares = 0;
  for (const [i, place] of pairs.world.entries()) {
    const pull = [0, 1].map((k) =>
      (residuals.jacobian[2 * i + k] as number[]).reduce(
        (sum, value, p) => sum + value * (solved[p] as number),
        0,
      ),
    ) as [number, number];
    const sigmaMark = pairs.sigmaPx * frames.image.scale;
    const sigmaPlace = pairs.sigmaMm * frames.world.scale;
    const byPlace = projectionSlopes(parameters, frames, lens, place)?.slopes.byPlace ?? [[], []];
    const [px, py] = [0, 1].map(
      (k) => pull[0] * (byPlace[0][k] as number) + pull[1] * (byPlace[1][k] as number),
    ) as [number, number];
    variance += sigmaMark ** 2 * (pull[0] ** 2 + pull[1] ** 2) + sigmaPlace ** 2 * (px ** 2 + py ** 2);
    const spread = byPlace.flat().reduce((sum, value) => sum + value * value, 0);
    expectedSquares += 2 * sigmaMark ** 2 + sigmaPlace ** 2 * spread;
  }
  const freedom = residuals.values.length - parameters.length;
  const squares = residuals.values.reduce((sum, value) => sum + value * value, 0);
  if (freedom <= 0) return Math.sqrt(variance);
  // What the stated doubts let expect of the squares, the share that the fit takes up left out.
  const expected = (expectedSquares * freedom) / residuals.values.length;
  if (expected > 0) return Math.sqrt(variance * Math.max(1, squares / expected));
  const perNumber = squares / freedom;
  return Math.sqrt(perNumber * solved.reduce((sum, value, p) => sum + value * (slope[p] as number), 0));
}
