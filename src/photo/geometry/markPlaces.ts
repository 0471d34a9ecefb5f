import { sum } from '../../ground/statistics.ts';
import { stepAgreement } from '../toolmarks/toolmarksSpectrum.ts';

/** The distances between neighbouring marks. Share is sd over mean: small for a machine. Null with two marks. */
export type Spacing = { meanMm: number; sdMm: number | null; share: number | null; medianMm: number };

/**
 * How marks at known places follow each other.
 *
 * @param placesMm  number[n], n ≥ 2, in any order
 */
export function placesAlong(placesMm: readonly number[]): Spacing {
  const rising = [...placesMm].sort((a, b) => a - b);
  const gaps = rising.slice(1).map((each, index) => each - (rising[index] as number));
  const n = gaps.length;
  const meanMm = sum(gaps) / n;
  const sdMm = n > 1 ? Math.sqrt(gaps.reduce((sum, each) => sum + (each - meanMm) ** 2, 0) / (n - 1)) : null;
  const sorted = [...gaps].sort((a, b) => a - b);
  const medianMm = ((sorted[Math.floor((n - 1) / 2)] as number) + (sorted[Math.floor(n / 2)] as number)) / 2;
  return { meanMm, sdMm, share: sdMm === null ? null : sdMm / meanMm, medianMm };
}

/**
 * Rayleigh’s test of marks against a spacing.
 *
 * Method: z = n R²; the chance is exp(√(1 + 4n + 4(n² − n²R²)) − (1 + 2n)).
 *
 * @source Zar, Biostatistical Analysis, from memory
 */
export function rayleigh(
  placesMm: readonly number[],
  periodMm: number,
): { agreement: number; z: number; chance: number } {
  const n = placesMm.length;
  const agreement = stepAgreement(placesMm, periodMm);
  const chance = Math.exp(Math.sqrt(1 + 4 * n + 4 * (n * n - (n * agreement) ** 2)) - (1 + 2 * n));
  return { agreement, z: n * agreement * agreement, chance: Math.min(1, chance) };
}
