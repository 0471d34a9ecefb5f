import type { Point } from '../picture.ts';
import { type Frame, frameOf, intoFrame } from './frame.ts';
import { chained, frameMatrix, type Homography, inverse, mapped } from './homography.ts';
import { distorted, type LensFrame, slopes, undistorted } from './lens.ts';

/** How a plane is seen: where its points come out in the picture, by perspective and, where known, the lens. */
export type PlaneView = {
  /** From the plane to the picture of a perfect lens. */
  toPicture: Homography;
  /** One radial term about the middle of the picture, radii counted in half its diagonal. */
  lens?: { k1: number; frame: LensFrame };
};

/** Marks in the picture with the places in the plane that they show: as many of the one as of the other. */
export type Pairs = { image: readonly Point[]; world: readonly Point[] };

/** Where a place in the plane comes out in the picture. */
export function projected(view: PlaneView, place: Point): Point {
  const { point } = mapped(view.toPicture, place);
  return view.lens === undefined ? point : distorted({ k1: view.lens.k1 }, view.lens.frame, point);
}

/** Which place in the plane a point of the picture shows; undefined on or beyond the horizon, or where the lens folds over. */
export function located(view: PlaneView, point: Point): Point | undefined {
  const straight =
    view.lens === undefined ? point : undistorted({ k1: view.lens.k1 }, view.lens.frame, point);
  if (straight === undefined) return undefined;
  const { point: place } = mapped(inverse(view.toPicture), straight);
  return place.every(Number.isFinite) ? place : undefined;
}

/** The frames a view is fitted in: there all numbers are of order 1. */
export type Frames = { image: Frame; world: Frame };

export function framesOf({ image, world }: Pairs): Frames {
  return { image: frameOf(image), world: frameOf(world) };
}

/** The view as 8 numbers in the frames, its ninth being 1, and a last one for the lens where there is one. */
export function parametersOf(view: PlaneView, frames: Frames): number[] {
  const [frame, back] = [frameMatrix(frames.image), inverse(frameMatrix(frames.world))];
  const framed = chained(chained(back, view.toPicture), frame).flat();
  const last = framed[8] as number;
  const eight = framed.slice(0, 8).map((value) => value / last);
  return view.lens === undefined ? eight : [...eight, view.lens.k1];
}

/** The view of such numbers. */
export function viewOf(parameters: readonly number[], frames: Frames, frame?: LensFrame): PlaneView {
  const framed = [
    parameters.slice(0, 3),
    parameters.slice(3, 6),
    [...parameters.slice(6, 8), 1],
  ] as unknown as Homography;
  const toPicture = chained(chained(frameMatrix(frames.world), framed), inverse(frameMatrix(frames.image)));
  return frame === undefined ? { toPicture } : { toPicture, lens: { k1: parameters[8] as number, frame } };
}

/** Slopes of a projected point, in the image frame: rows are x and y. */
export type ProjectionSlopes = {
  /** By the 8 (or 9) parameters. */
  byParameter: [number[], number[]];
  /** By the place, in the world frame. */
  byPlace: [number[], number[]];
};

/**
 * How a projected point moves with the parameters and with the place, in the frames.
 *
 * @returns undefined where the place lies on or beyond the horizon
 */
export function projectionSlopes(
  parameters: readonly number[],
  frames: Frames,
  lensFrame: LensFrame | undefined,
  place: Point,
): { point: Point; slopes: ProjectionSlopes } | undefined {
  const [a, b, c, d, e, f, g, h] = parameters as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [X, Y] = intoFrame(frames.world, place);
  const w = g * X + h * Y + 1;
  if (!(w > 1e-12)) return undefined;
  const [u, v] = [(a * X + b * Y + c) / w, (d * X + e * Y + f) / w];
  const byParameter: [number[], number[]] = [
    [X / w, Y / w, 1 / w, 0, 0, 0, (-u * X) / w, (-u * Y) / w],
    [0, 0, 0, X / w, Y / w, 1 / w, (-v * X) / w, (-v * Y) / w],
  ];
  const byPlace: [number[], number[]] = [
    [(a - u * g) / w, (b - u * h) / w],
    [(d - v * g) / w, (e - v * h) / w],
  ];
  if (lensFrame === undefined) return { point: [u, v], slopes: { byParameter, byPlace } };
  return throughLens([u, v], { byParameter, byPlace }, parameters[8] as number, frames.image, lensFrame);
}

function throughLens(
  [u, v]: Point,
  { byParameter, byPlace }: ProjectionSlopes,
  k1: number,
  image: Frame,
  { centre, unitPx }: LensFrame,
): { point: Point; slopes: ProjectionSlopes } {
  // One unit for both directions: half the diagonal.
  const unit = unitPx[0] * image.scale;
  const [cx, cy] = intoFrame(image, centre);
  const [x, y] = [(u - cx) / unit, (v - cy) / unit];
  const { xx, xy, yy } = slopes({ k1 }, [x, y]);
  const turned = ([ofX, ofY]: [number[], number[]]): [number[], number[]] => [
    ofX.map((value, i) => xx * value + xy * (ofY[i] as number)),
    ofY.map((value, i) => xy * (ofX[i] as number) + yy * value),
  ];
  const r2 = x * x + y * y;
  const [lensX, lensY] = turned(byParameter);
  return {
    point: [cx + unit * x * (1 + k1 * r2), cy + unit * y * (1 + k1 * r2)],
    slopes: {
      byParameter: [
        [...lensX, unit * x * r2],
        [...lensY, unit * y * r2],
      ],
      byPlace: turned(byPlace),
    },
  };
}
