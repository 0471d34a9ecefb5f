import type { Picture, Region } from '../picture.ts';
import { type MarkMeasures, markMeasures } from './toolmarksFeatures.ts';
import { type MarkOdds, markOdds } from './toolmarksKinds.ts';

/** What the marks on a region are, as far as they tell. */
export type Toolmarks = MarkOdds & {
  /** The strongest period of marks that cross the board; undefined where none stand out. */
  pitch?: { mm: number; sigmaMm: number };
  /** Share of the marks’ power in that period and its multiples; 0 where no marks cross the board. */
  regularity: number;
  /** Of arcs; undefined where the marks are as good as straight. */
  arc?: { radiusMm: number; sigmaMm: number };
  /** How marks lean from square across, radians, from across towards along. */
  leanRad: number;
  /** Share of the lightness along the board that marks across it explain, 0–1. */
  strength: number;
  /** The chance of so strong a period where nothing is periodic (Fisher). */
  chance: number;
  /** Length and width of what was looked at, mm. */
  seenMm: { along: number; across: number };
};

/** Below this share nothing crosses the board: 5 of 120 drawn surfaces without marks reach it. */
const leastStrength = 0.18;

/**
 * Spacing, straightness and kind of the tool marks on a region of a photograph under raking light.
 *
 * Method: see crossMarks, markPitch, alongMarks and markOdds. The pitch is the spectrum’s period where that holds half of the power and is within a
 * quarter of the middle distance from mark to mark; else it is that distance, which unevenness spoils less. Uncertainties were found on plainer drawn surfaces and are too narrow for saws on varied ones (docs/toolmarks.md):
 * of a period 15 or 30 in 1000 as it is more or less even, of a middle distance 80; of a bend twice its spread over four quarters of the length, and 25 in 1000.
 *
 * @param mmPerPx       of the picture
 * @param directionRad  of the board’s length in the picture, from x towards y
 * @returns undefined where the region is too small
 * @accuracy docs/toolmarks.md
 * @source ours
 */
export function toolmarks(
  picture: Picture,
  region: Region,
  mmPerPx: number,
  directionRad: number,
): Toolmarks | undefined {
  const measures = markMeasures(picture, region, mmPerPx, directionRad);
  if (measures === undefined) return undefined;
  const { plane, cross, pitch, features, edge } = measures;
  const odds = markOdds(features, edge);
  const crosses = cross.strength >= leastStrength;
  const bendSigma = Math.hypot(2 * cross.bendSigma, 0.025 * cross.bend);
  const bends = crosses && Math.abs(cross.bend) > 4 * Math.hypot(2 * cross.bendSigma, 1e-4);
  const radiusMm = 1 / Math.abs(cross.bend);
  return {
    ...odds,
    ...(crosses ? { pitch: pitchOf(measures) } : {}),
    regularity: crosses ? pitch.regularity : 0,
    ...(bends ? { arc: { radiusMm, sigmaMm: bendSigma * radiusMm ** 2 } } : {}),
    leanRad: Math.atan(cross.lean),
    strength: cross.strength,
    chance: pitch.chance,
    seenMm: { along: plane.along * plane.stepMm, across: plane.across * plane.stepMm },
  };
}

function pitchOf({ pitch, middleGapMm }: MarkMeasures): { mm: number; sigmaMm: number } {
  const { pitchMm, regularity } = pitch;
  const isEven =
    middleGapMm === undefined || (regularity >= 0.5 && Math.abs(pitchMm / middleGapMm - 1) < 0.25);
  if (isEven) return { mm: pitchMm, sigmaMm: (regularity >= 0.6 ? 0.015 : 0.03) * pitchMm };
  return { mm: middleGapMm, sigmaMm: 0.08 * middleGapMm };
}
