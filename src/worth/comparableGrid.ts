import Fraction from 'fraction.js';
import { type Exact, exact, nothing, total } from './exactMoney.ts';

/** Why a comparable is moved towards the piece valued, in percent or by a sum; positive raises it, because it is the lesser piece. */
export type Adjustment = { why: string; percent?: number | undefined; amount?: number | undefined };

/** A sale with what has to be set right before it can be compared. */
export type Comparable = {
  price: Exact;
  /** Of the terms of the sale (time, a forced sale …): each on the price as the one before left it. */
  terms: readonly Adjustment[];
  /** Of the piece (size, condition …): each on the price after the terms, and added up. */
  characteristics: readonly Adjustment[];
};

/** One adjustment as it was carried out. */
export type Step = { why: string; adjustment: Exact; running?: Exact };

/** A comparable after its adjustments. */
export type AdjustedComparable = {
  termSteps: Step[];
  afterTerms: Exact;
  characteristicSteps: Step[];
  adjusted: Exact;
  /** All adjustments in percent of the price, with their signs and without. */
  netPercent: Exact;
  grossPercent: Exact;
};

/**
 * What would this comparable have fetched, had it been the piece that is valued?
 *
 * Method: adjustments for the terms of the sale one after the other, each on what the one before left; those for the piece all on the
 * price after the terms, added up. Sums are exact fractions.
 *
 * @source sequence of adjustments: common practice of appraisers; held against a published note on it
 */
export function adjustedComparable({ price, terms, characteristics }: Comparable): AdjustedComparable {
  let running = price;
  const termSteps = terms.map((each): Step => {
    const adjustment = change(each, running);
    running = running.add(adjustment);
    return { why: each.why, adjustment, running };
  });
  const afterTerms = running;
  const characteristicSteps = characteristics.map((each) => ({
    why: each.why,
    adjustment: change(each, afterTerms),
  }));
  const steps = [...termSteps, ...characteristicSteps].map(({ adjustment }) => adjustment);
  const percent = (sum: Exact) => (price.equals(0) ? nothing : sum.div(price).mul(100));
  return {
    termSteps,
    afterTerms,
    characteristicSteps,
    adjusted: afterTerms.add(total(characteristicSteps.map(({ adjustment }) => adjustment))),
    netPercent: percent(total(steps)),
    grossPercent: percent(total(steps.map((each) => each.abs()))),
  };
}

/** The weighted mean of exact sums. */
export function weightedMean(values: readonly Exact[], weights: readonly number[]): Exact {
  const shares = weights.map(exact);
  return total(values.map((value, index) => value.mul(shares[index] as Exact))).div(total(shares));
}

function change({ percent, amount }: Adjustment, of: Exact): Exact {
  const share = percent === undefined ? new Fraction(0) : of.mul(exact(percent)).div(100);
  return amount === undefined ? share : share.add(exact(amount));
}
