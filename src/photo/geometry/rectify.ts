import type { Point } from '../picture.ts';
import { intoFrame } from './frame.ts';
import { directHomography, inverse } from './homography.ts';
import { leastSquares, type Residuals } from './leastSquares.ts';
import type { LensFrame } from './lens.ts';
import {
  type Frames,
  framesOf,
  type Pairs,
  type PlaneView,
  parametersOf,
  projected,
  projectionSlopes,
  viewOf,
} from './planeView.ts';

/** A fitted view: how far the marks lie from where it puts them. */
export type FittedView = {
  view: PlaneView;
  /** Root mean square distance in the picture, in pixels. */
  residualPx: number;
  worst: { index: number; residualPx: number };
  /** Numbers that were free, of 2n: none for four pairs and no lens. */
  freedom: number;
  /** Standard uncertainty of the lens term for marks that are 1 px off in each direction; only with a lens. */
  sigmaK1PerPx?: number;
};

/**
 * How is this plane seen in the picture, judged by marks of known place?
 *
 * Method: the direct linear transformation in normalised coordinates, then Gauss–Newton on the distances in the picture
 * between the marks and where the view puts their places; with a lens its radial term is fitted together with the view.
 *
 * @param pairs  as checked by `pairFault`
 * @param lens   where to fit a radial term: the middle of the picture, radii in half its diagonal
 * @returns undefined where the fit does not come to rest
 * @source Hartley and Zisserman, Multiple View Geometry (2nd ed., 2003), sections 4.1, 4.2 and 4.5; from memory
 */
export function rectifyPlane(pairs: Pairs, lens?: LensFrame): FittedView | undefined {
  const frames = framesOf(pairs);
  const first: PlaneView = { toPicture: inverse(directHomography(pairs.image, pairs.world).homography) };
  const start = parametersOf(lens === undefined ? first : { ...first, lens: { k1: 0, frame: lens } }, frames);
  const fit = leastSquares(start, (parameters) => residualsOf(parameters, pairs, frames, lens));
  if (fit === undefined) return undefined;
  const view = viewOf(fit.parameters, frames, lens);
  return {
    view,
    ...residualOf(view, pairs),
    freedom: 2 * pairs.image.length - fit.parameters.length,
    ...(lens === undefined
      ? {}
      : { sigmaK1PerPx: frames.image.scale * Math.sqrt(fit.cofactor[8]?.[8] as number) }),
  };
}

/** How far the marks lie from where the view puts their places, in pixels: together, and the worst. */
export function residualOf(view: PlaneView, pairs: Pairs): Pick<FittedView, 'residualPx' | 'worst'> {
  const off = distancesOf(view, pairs);
  const index = off.indexOf(Math.max(...off));
  return {
    residualPx: Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / off.length),
    worst: { index, residualPx: off[index] as number },
  };
}

/** How far each mark lies from where the view puts its place, in pixels. */
export function distancesOf(view: PlaneView, { image, world }: Pairs): number[] {
  return image.map((mark, i) => {
    const [x, y] = projected(view, world[i] as Point);
    return Math.hypot(x - mark[0], y - mark[1]);
  });
}

/** Residuals and their slopes in the image frame; undefined where a place falls beyond the horizon. */
export function residualsOf(
  parameters: readonly number[],
  { image, world }: Pairs,
  frames: Frames,
  lens: LensFrame | undefined,
): Residuals | undefined {
  const values: number[] = [];
  const jacobian: number[][] = [];
  for (const [i, mark] of image.entries()) {
    const found = projectionSlopes(parameters, frames, lens, world[i] as Point);
    if (found === undefined) return undefined;
    const [x, y] = intoFrame(frames.image, mark);
    values.push(found.point[0] - x, found.point[1] - y);
    jacobian.push(...found.slopes.byParameter);
  }
  return { values, jacobian };
}
