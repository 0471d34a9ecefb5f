import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { Posterior } from '../summation/readingPosterior.ts';

/** Two sides that a finding can speak for: some readings against some others. */
export type Sides = { one: readonly ReadingId[]; other: readonly ReadingId[] };

/** The readings made as what is left of a sum when a stricter one is taken off, with what they are taken from. */
const lefts: Partial<Record<ReadingId, readonly ReadingId[]>> = {
  'period-repaired': ['period-intact', 'period-repaired'],
  'period-altered': ['period-intact', 'period-repaired', 'period-altered'],
  'made-up': ['period-intact', 'period-repaired', 'period-altered', 'made-up'],
};

/** Below this share of what it is taken from, what is left is rounding. */
const rounding = 1e-12;

/** One reading against all the others. */
export function againstRest(reading: ReadingId): Sides {
  return { one: [reading], other: readingIds.filter((id) => id !== reading) };
}

/** The most probable reading but one; the earlier listed wins a tie. */
export function strongestRival(posterior: Posterior, leading: ReadingId): ReadingId {
  return readingIds
    .filter((id) => id !== leading)
    .reduce((best, id) => (posterior.readings[id] > posterior.readings[best] ? id : best));
}

/** What some readings weigh together; what is no more than rounding counts as nothing. On the scale of the posterior. */
export function massOf({ readings }: Posterior, ids: readonly ReadingId[]): number {
  return ids.reduce((sum, id) => {
    const from = lefts[id]?.reduce((all, each) => all + readings[each], 0) ?? 0;
    return readings[id] > from * rounding ? sum + readings[id] : sum;
  }, 0);
}

/**
 * How far one finding or more move the odds of one side against the other.
 *
 * @returns decibans, exact to the rounding of the sums; `null` where a side has nothing left, with them or without
 * @source I. J. Good, Probability and the Weighing of Evidence (1950): ten times the base-ten logarithm of the ratio of
 *   the odds with and without
 */
export function weightBetween(withThem: Posterior, without: Posterior, sides: Sides): number | null {
  const logOdds = (posterior: Posterior) =>
    Math.log10(massOf(posterior, sides.one) / massOf(posterior, sides.other));
  const decibans = 10 * (logOdds(withThem) - logOdds(without));
  return Number.isFinite(decibans) ? decibans : null;
}
