import { mean } from '../../ground/statistics.ts';
import type { GrainMatch } from './grainMatch.ts';

/** Why a match says nothing. */
export type GrainSilence = 'short' | 'narrow' | 'far' | 'faint' | 'unclear';

/** What of a match tells one piece from two, in the order of the shipped weights. */
export const featureNames = ['one', 'fit', 'beyondNull', 'expected', 'aside'] as const;

/** Fainter grain than this (lightness 0–100) is lost among a file's rounding, lamp light and brush marks. */
export const leastContrast = 0.25;
/** Below this the two halves of one strip don't foretell each other, so nothing can be asked of the strip beyond. */
const leastAgreement = 0.45;
const leastRows = 16;
/** Narrower strips hold too few grain lines to say anything. */
const leastColumns = 40;
/** A band longer than so many widths of the part was never tried. */
export const mostGap = 2;
const leastNull = 8;

/** Whether a match can say anything at all: too short or narrow, too faint, or not even at one with itself. */
export function silenceOf(match: GrainMatch, rows: number): GrainSilence | undefined {
  if (rows < leastRows) return 'short';
  if (match.columns < leastColumns || match.null.correlations.length < leastNull) return 'narrow';
  if (match.gapPx > mostGap * match.columns) return 'far';
  if (Math.min(...match.profiles.map(({ contrast }) => contrast)) < leastContrast) return 'faint';
  if (Math.min(...match.profiles.map(({ agreement }) => agreement)) < leastAgreement) return 'unclear';
  return undefined;
}

/**
 * The figures of a match that its ratio hangs on: how well it fits (Fisher's z of the correlation), how far beyond what
 * non-facing strips of the same photograph reach, how well it could fit at most (from how each strip agrees with itself), and how far aside it fits.
 */
export function featuresOf(match: GrainMatch): number[] {
  const fit = fisher(match.correlation);
  const { mean, sd } = nullOf(match);
  const [a, b] = match.profiles.map(({ agreement }) => Math.max(0.05, agreement)) as [number, number];
  const aside = Math.log1p((match.shiftPx / (0.1 * match.mostShiftPx)) ** 2);
  return [1, fit, Math.max(-3, Math.min(12, (fit - mean) / sd)), fisher(Math.sqrt(a * b)), aside];
}

/** The photograph's own null, as Fisher's z. */
export function nullOf({ null: { correlations } }: GrainMatch): { mean: number; sd: number } {
  const values = correlations.map(fisher);
  const average = mean(values);
  const squares = values.reduce((sum, each) => sum + (each - average) ** 2, 0);
  return { mean: average, sd: Math.max(0.05, Math.sqrt(squares / Math.max(1, values.length - 1))) };
}

function fisher(correlation: number): number {
  return Math.atanh(Math.max(-0.99, Math.min(0.99, correlation)));
}
