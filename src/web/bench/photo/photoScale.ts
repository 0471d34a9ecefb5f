import type { CalculationResult } from '../../../calculations/define.ts';
import { photoMeasure } from '../../../calculations/photoMeasure.ts';
import { photoRectify } from '../../../calculations/photoRectify.ts';
import type { AskedOf, OutputOf } from '../../../calculations/runCalculation.ts';
import type { Knowledge } from '../../../knowledge/schema.ts';
import { mapped } from '../../../photo/geometry/homography.ts';
import { distorted } from '../../../photo/geometry/lens.ts';
import type { Point } from '../../../photo/picture.ts';
import { runHere } from '../runHere.ts';

/** What `photo.rectify` gives back. */
export type Rectified = OutputOf<typeof photoRectify>;

/** How a picture’s pixels become millimetres: a plane that marks of known place fix, or one known length. */
export type PhotoScale = {
  /** Allowed for a lens whose bend is not known, in percent of a length. */
  lensAllowancePercent: number;
} & (
  | {
      kind: 'plane';
      /** Fields of `photo.rectify`. */
      asked: { image: readonly Point[]; world: readonly Point[]; pictureSize?: Point };
      rectified: Rectified;
      /** How sure the marks behind it are, and their places. */
      sigmaPx: number;
      sigmaMm: number;
    }
  | { kind: 'known'; points: readonly [Point, Point]; lengthMm: number; sigmaMm: number }
);

/** The input of `photo.measure` for a line, or for the angle of two. */
export function measureInput(
  scale: PhotoScale,
  points: readonly [Point, Point],
  sigmaPx: number,
  secondLine?: readonly [Point, Point],
): AskedOf<typeof photoMeasure> {
  const { lensAllowancePercent } = scale;
  const asked = { points, sigmaPx, ...(secondLine === undefined ? {} : { secondLine }) };
  if (scale.kind === 'known') {
    const { points: ends, lengthMm, sigmaMm } = scale;
    return { ...asked, scale: { points: ends, lengthMm, sigmaMm }, lensAllowancePercent };
  }
  const { image, world } = scale.asked;
  const { matrix, lens } = scale.rectified;
  return {
    ...asked,
    matrix,
    correspondences: { image, world, sigmaPx: scale.sigmaPx, sigmaMm: scale.sigmaMm },
    ...(lens === undefined ? { lensAllowancePercent } : { lens }),
  };
}

/** Points of the picture in millimetres: in the plane, or by the known length. */
export function inMillimetres(
  scale: PhotoScale,
  points: readonly Point[],
  knowledge: Knowledge,
): CalculationResult<Point[]> {
  if (scale.kind === 'known') {
    const perPx = knownPerPx(scale);
    return { ok: true, output: points.map(([x, y]): Point => [x * perPx, y * perPx]) };
  }
  const result = runHere(photoRectify, { ...scale.asked, map: points }, knowledge);
  return result.ok ? { ok: true, output: result.output.mapped ?? [] } : result;
}

/** Millimetres of one pixel at a place of the picture; undefined beyond the horizon of the plane. */
export function mmPerPxAt(scale: PhotoScale, [x, y]: Point, knowledge: Knowledge): number | undefined {
  if (scale.kind === 'known') return knownPerPx(scale);
  const about: Point[] = [
    [x - 4, y],
    [x + 4, y],
    [x, y - 4],
    [x, y + 4],
  ];
  const placed = inMillimetres(scale, about, knowledge);
  if (!placed.ok) return undefined;
  const [a, b, c, d] = placed.output as [Point, Point, Point, Point];
  const area = Math.abs((b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]));
  const perPx = Math.sqrt(area) / 8;
  return Number.isFinite(perPx) && perPx > 0 ? perPx : undefined;
}

/**
 * What the scale itself leaves in doubt of a length between two places in the plane, mm: of the pairs behind it and of the lens, as
 * `photo.measure` has it; undefined where it can’t be told.
 */
export function scaleDoubtMm(
  scale: PhotoScale,
  [a, b]: readonly [Point, Point],
  sigmaPx: number,
  knowledge: Knowledge,
): number | undefined {
  const points = [inPicture(scale, a), inPicture(scale, b)] as const;
  const result = runHere(photoMeasure, measureInput(scale, points, sigmaPx), knowledge);
  return result.ok ? Math.hypot(result.output.shares.pairsMm, result.output.shares.lensMm) : undefined;
}

/** Where a place in millimetres lies in the picture. */
function inPicture(scale: PhotoScale, [x, y]: Point): Point {
  if (scale.kind === 'known') {
    const perPx = knownPerPx(scale);
    return [x / perPx, y / perPx];
  }
  const { toPicture, lens } = scale.rectified;
  const { point } = mapped(toPicture, [x, y]);
  return lens === undefined
    ? point
    : distorted({ k1: lens.k1 }, { centre: lens.centre, unitPx: [lens.unitPx, lens.unitPx] }, point);
}

function knownPerPx({ points: [a, b], lengthMm }: Extract<PhotoScale, { kind: 'known' }>): number {
  return lengthMm / Math.hypot(b[0] - a[0], b[1] - a[1]);
}
