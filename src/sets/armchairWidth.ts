import { median } from '../ground/statistics.ts';
import type { Member } from './likeness.ts';
import { meanAndSd } from './robustOutliers.ts';

/** How much wider the armchairs of a set are than its side chairs, in one measure. */
export type WidthDifference = { measure: string; differenceMm: number; sigmaMm: number };

const overall = ['width', 'overallwidth', 'widthoverall'];
const seat = ['seatwidthfront', 'seatwidth', 'widthseat', 'seatfrontwidth', 'frontwidth'];

/**
 * How much wider the armchairs of a set are than its side chairs: over all, and in the seat.
 *
 * Method: the difference of the medians. Its uncertainty is that of two medians: 1.2533 · s/√n for three or more, s/√n for
 * fewer, with s the spread among them or the measuring uncertainty, whichever is larger.
 *
 * @returns a measure is missing where the armchairs or the side chairs do not have it
 * @source common practice; 1.2533 = √(π/2), the efficiency of the median
 */
export function armchairWidth(
  members: readonly Member[],
  sigmaMm: number,
): { overall?: WidthDifference; seat?: WidthDifference } {
  const armed = members.filter(({ kind }) => isArmed(kind));
  const plain = members.filter(({ kind }) => isSide(kind));
  const of = (names: readonly string[]) => {
    const measure = [...new Set(members.flatMap(({ measures }) => Object.keys(measures)))]
      .filter((name) => names.includes(plainName(name)))
      .find((name) => [armed, plain].every((group) => valuesOf(group, name).length > 0));
    if (measure === undefined) return undefined;
    const [wide, narrow] = [valuesOf(armed, measure), valuesOf(plain, measure)];
    return {
      measure,
      differenceMm: median(wide) - median(narrow),
      sigmaMm: Math.hypot(medianSigma(wide, sigmaMm), medianSigma(narrow, sigmaMm)),
    };
  };
  const found = { overall: of(overall), seat: of(seat) };
  return {
    ...(found.overall ? { overall: found.overall } : {}),
    ...(found.seat ? { seat: found.seat } : {}),
  };
}

function isArmed(kind: string | undefined): boolean {
  return kind !== undefined && /arm|elbow/.test(kind.toLowerCase());
}

function isSide(kind: string | undefined): boolean {
  return kind !== undefined && /side|single/.test(kind.toLowerCase());
}

function plainName(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z]/g, '')
    .replace(/mm$/, '');
}

function valuesOf(members: readonly Member[], measure: string): number[] {
  return members.flatMap(({ measures }) => (measures[measure] === undefined ? [] : [measures[measure]]));
}

function medianSigma(values: readonly number[], sigmaMm: number): number {
  const spread = Math.max(meanAndSd(values).sd, sigmaMm);
  return ((values.length > 2 ? 1.253314 : 1) * spread) / Math.sqrt(values.length);
}
