import { outOf } from './probabilityWords.ts';
import type { Weighing } from './weighing.ts';

/** What firmness is judged by: `low` is the low end of the leading answer’s probability over the trials. */
export type FirmnessGrounds = {
  looks: number;
  photoOnly: boolean;
  clashes: boolean;
  draws: number;
  shareLeading: number;
  probability: number;
  low: number;
};

/**
 * In what share of the trials an answer must lead, and how probable it must be as it stands and at the low end, to be called
 * settled: the word promises 95 in 100. To lead in the trials alone is stability, not probability.
 */
const leadsIn = 0.95;
const probableAtLeast = 0.95;
const lowAtLeast = 0.8;

/**
 * Whether the leading answer is firm, and why in a sentence. To lead is not to be believed: a reading can be first among many
 * and still be more probably wrong than right.
 */
export function firmness(grounds: FirmnessGrounds): Pick<Weighing, 'firm' | 'firmness'> {
  const { looks, photoOnly, clashes, draws, shareLeading, probability, low } = grounds;
  const answer = (firm: boolean, why: string) => ({
    firm,
    firmness: { shareOfDraws: draws === 0 ? null : shareLeading, draws, why },
  });
  if (draws === 0)
    return answer(false, 'The ranges of the figures have not been tested yet, so nothing is called settled.');
  const led = `What leads does so in ${Math.floor(shareLeading * 100)} of 100 trials of the ranges`;
  if (looks === 0) return answer(false, 'Nothing has been looked at yet: only the starting odds speak.');
  if (clashes) return answer(false, `${led}, but none of the readings explains the findings well.`);
  if (photoOnly) return answer(false, `${led}, but photographs alone cannot settle a reading.`);
  if (shareLeading < leadsIn) return answer(false, `${led}; it would take 95 to call it settled.`);
  const bar = outOf(probableAtLeast);
  const floor = outOf(lowAtLeast);
  if (probability < probableAtLeast)
    return answer(false, `${led}, but is less probable than ${bar}, which it would take to call it settled.`);
  if (low < lowAtLeast)
    return answer(false, `${led}, but over the range of the figures it falls below ${floor}.`);
  return answer(true, `${led}, has at least ${bar} and stays above ${floor}.`);
}
