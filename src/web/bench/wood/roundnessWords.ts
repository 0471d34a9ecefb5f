import type { OutputOf } from '../../../calculations/runCalculation.ts';
import type { woodRoundness } from '../../../calculations/woodRoundness.ts';
import { inSentence } from '../../../knowledge/inSentence.ts';
import { told } from '../../../units/doubt.ts';
import { formatInches, formatMm } from '../../../units/length.ts';

/** What `wood.roundness` gives back. */
export type Roundness = OutputOf<typeof woodRoundness>;

/** The result in a sentence: what was found, what old and recent work would have, and how far that tells them apart. */
export function roundnessWords(result: Roundness, wood: string): string {
  const { differenceMm, sigmaMm, expectedOld, expectedNew, likelihoodRatio } = result;
  const found =
    Math.abs(differenceMm) <= 2 * sigmaMm
      ? `The two diameters agree within the measuring (${mm(differenceMm)}, give or take ${mm(told(sigmaMm))}).`
      : `They differ by ${both(differenceMm)}, give or take ${mm(told(sigmaMm))}.`;
  const expected = `In ${inSentence(wood)} of old make ${both(expectedOld.meanMm)} would be expected, give or take ${mm(told(expectedOld.sdMm))}, in recent make ${mm(expectedNew.meanMm)}, give or take ${mm(told(expectedNew.sdMm))}.`;
  return `${found} ${expected} ${ratioWords(likelihoodRatio)}`;
}

/** How far a ratio of old to recent tells them apart. */
export function ratioWords(ratio: number): string {
  const times = (value: number) => (value >= 10 ? String(Math.round(value)) : value.toFixed(1));
  if (ratio > 0.8 && ratio < 1.25) return 'It does not tell old from recent.';
  return ratio > 1
    ? `That is ${times(ratio)} times as probable of old work as of recent.`
    : `That is ${times(1 / ratio)} times as probable of recent work as of old.`;
}

function mm(value: number): string {
  return formatMm(value, 1);
}

function both(value: number): string {
  return value < 0.2 ? mm(value) : `${formatInches(value, { denominator: 32 })} (${mm(value)})`;
}
