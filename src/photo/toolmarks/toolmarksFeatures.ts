import type { Picture, Region } from '../picture.ts';
import { type AlongMarks, alongMarks } from './toolmarksAlong.ts';
import { type CrossMarks, crossMarks, withoutSlow } from './toolmarksCross.ts';
import { type MarksEdge, strongestEdge } from './toolmarksEdge.ts';
import { type MarksPlane, marksPlane } from './toolmarksPlane.ts';
import { markPitch, type Pitch, stepAgreement } from './toolmarksSpectrum.ts';

/** What is measured of the marks on a region, before anything is concluded. */
export type MarkMeasures = {
  plane: Omit<MarksPlane, 'values'>;
  cross: CrossMarks;
  pitch: Pitch;
  /** How even the single marks lie for that pitch, 0–1, and how many were found. */
  stepAgreement: number;
  marksFound: number;
  /** The middle distance from mark to mark, counting shallow ones too; undefined with fewer than four. */
  middleGapMm: number | undefined;
  along: AlongMarks;
  /** The straight edge that parts the region most. */
  edge: MarksEdge;
  /**
   * The numbers the kinds are told apart by, in this order: cross strength, gain of halves, pitch, regularity, bend, lean, cross share, peakedness along,
   * step agreement, track share, ridges, fine share, fine length, fine peakedness, fine spacing.
   */
  features: number[];
};

/** Periods looked for, mm. */
const periods = { shortMm: 0.7, longMm: 9 } as const;

/**
 * Measures the marks on a region.
 *
 * Method: marks that cross the board by `crossMarks`; since raking light shows slopes, the profile is summed up to heights before its
 * spacing is taken; marks along the board by `alongMarks`. Variances are taken as shares of the whole region’s, so that contrast does not count.
 *
 * @returns undefined where the region is too small
 */
export function markMeasures(
  picture: Picture,
  region: Region,
  mmPerPx: number,
  directionRad: number,
): MarkMeasures | undefined {
  const plane = marksPlane(picture, region, mmPerPx, directionRad);
  if (plane === undefined) return undefined;
  const cross = crossMarks(plane);
  const heights = heightsOf(cross.profile, plane.stepMm);
  const pitch = markPitch(
    heights,
    plane.stepMm,
    Math.max(periods.shortMm, 2.5 * plane.stepMm),
    periods.longMm,
  );
  const places = groovePlaces(heights, plane.stepMm, 1);
  const agreed = stepAgreement(places, pitch.pitchMm);
  const along = alongMarks(plane);
  const spread = varianceOf(plane.values) + 1e-8;
  const features = [
    Math.log(Math.max(cross.strength, 1e-3) * cross.strips),
    Math.log(Math.max(cross.halfStrength, 1e-3) / Math.max(cross.strength, 1e-3)),
    Math.log(pitch.pitchMm),
    pitch.regularity,
    Math.sqrt(Math.abs(cross.bend) * 1000),
    Math.abs(cross.lean),
    Math.log((varianceOf(cross.profile) + 1e-9) / spread),
    Math.log(kurtosis(heights)),
    agreed,
    along.tracks - Math.log(spread),
    along.ridges,
    along.fineContrast - Math.log(spread),
    along.fineLength,
    along.finePeaked,
    along.fineSpacing,
  ];
  const { along: samplesAlong, across, stepMm } = plane;
  return {
    plane: { along: samplesAlong, across, stepMm },
    cross,
    pitch,
    stepAgreement: agreed,
    marksFound: places.length,
    middleGapMm: middleGap(groovePlaces(heights, plane.stepMm, 0.2)),
    along,
    edge: strongestEdge(plane),
    features,
  };
}

/** Heights from slopes: their running sum, slow changes taken off, grooves downwards. */
function heightsOf(profile: Float64Array, stepMm: number): Float64Array {
  let sum = 0;
  const summed = profile.map((each) => {
    sum += each * stepMm;
    return sum;
  });
  const heights = withoutSlow(summed, Math.max(3, Math.round(5 / stepMm)));
  const third = heights.reduce((total, each) => total + each ** 3, 0);
  return third > 0 ? heights.map((each) => -each) : heights;
}

function middleGap(placesMm: readonly number[]): number | undefined {
  if (placesMm.length < 4) return undefined;
  const gaps = placesMm.slice(1).map((place, index) => place - (placesMm[index] as number));
  return gaps.sort((a, b) => a - b)[Math.floor(gaps.length / 2)];
}

/** Where grooves lie, mm: the lowest places half a millimetre either side, so many standard deviations deep. */
function groovePlaces(heights: Float64Array, stepMm: number, deviations: number): number[] {
  const deep = -deviations * Math.sqrt(varianceOf(heights));
  const reach = Math.max(1, Math.round(0.5 / stepMm));
  const places: number[] = [];
  for (let at = reach; at < heights.length - reach; at++) {
    const here = heights[at] as number;
    let lowest = here < deep;
    for (let by = -reach; by <= reach && lowest; by++) lowest = (heights[at + by] as number) >= here;
    if (lowest) places.push(at * stepMm);
  }
  return places;
}

function kurtosis(values: Float64Array): number {
  const variance = varianceOf(values);
  if (!(variance > 0)) return 3;
  return values.reduce((sum, each) => sum + each ** 4, 0) / values.length / variance ** 2;
}

function varianceOf(values: Float64Array | Float32Array): number {
  let [sum, squares] = [0, 0];
  for (const each of values) sum += each;
  const mean = sum / values.length;
  for (const each of values) squares += (each - mean) ** 2;
  return squares / values.length;
}
