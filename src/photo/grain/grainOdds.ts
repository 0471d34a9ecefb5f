import { featuresOf, type GrainSilence, nullOf } from './grainFeatures.ts';
import type { GrainMatch } from './grainMatch.ts';
import shipped from './grainShipped.json' with { type: 'json' };

/** What a match says for one piece against two. */
export type GrainOdds = {
  /** One piece : two; exactly 1 where nothing can be told. */
  likelihoodRatio: number;
  /** Standard uncertainty of ten times its base-ten logarithm, from the pairs it was learnt on. */
  sigmaDecibans: number;
  /** Between these it is held, whatever the match. */
  lowest: number;
  highest: number;
  held: boolean;
  /** How far aside the second strip's grain lies, with what drift and slope leave open. */
  shiftSigmaPx: number;
  null: {
    /** Non-facing strips of this photograph, and how many of them fit as well as the facing ones. */
    photoStrips: number;
    photoReached: number;
    /** Their correlations in the middle and at the level that one in six passes. */
    photoTypical: number;
    photoHigh: number;
    /** Pairs of two pieces that came with the program, and the share of them that fit as well as this. */
    shippedPairs: number;
    shippedReached: number;
    onePiecePairs: number;
  };
};

/** Nobody has tried it on enough real wood: rendered pairs carry no more than this, whatever their number. A judgement. */
export const mostRatio = 100;

/**
 * The likelihood ratio of a match, one piece : two.
 *
 * Method: a logistic regression on the match's features, learnt on rendered pairs of which half are of one piece, gives the logarithm of the ratio.
 * It is held where the pairs can no longer vouch for it: when none of n pairs shows a thing, it may yet be there three times in n (the rule of
 * three, at 95 %), and more where some show it. So it goes no higher than the largest ratio that counting the pairs beyond any
 * limit supports, never over a third of the pairs; no lower than the same the other way round; and never beyond a hundred to one.
 *
 * @source logistic regression is common practice for turning scores into likelihood ratios; bounding them by the number of samples after Vergeer and
 *         others, Science and Justice 56 (2016), read in its summary, here in the simpler form of the rule of three (Eypasch and others, British Medical Journal 311 (1995) 619–620, as others cite it)
 */
export function grainOdds(match: GrainMatch, silence: GrainSilence | undefined): GrainOdds {
  const features = featuresOf(match);
  const { weights, covariance, pairsOfOne, pairsOfTwo, driftShare } = shipped;
  const score = features.reduce((sum, each, at) => sum + each * (weights[at] as number), 0);
  const highest = Math.min(mostRatio, shipped.highest);
  const lowest = Math.max(1 / mostRatio, shipped.lowest);
  const ratio = Math.min(highest, Math.max(lowest, Math.exp(score)));
  const variance = features.reduce(
    (sum, a, i) =>
      sum + features.reduce((inner, b, j) => inner + a * b * ((covariance[i] as number[])[j] as number), 0),
    0,
  );
  const { mean, sd } = nullOf(match);
  const own = match.null.correlations;
  return {
    likelihoodRatio: silence === undefined ? ratio : 1,
    sigmaDecibans: silence === undefined ? (10 * Math.sqrt(Math.max(0, variance))) / Math.LN10 : 0,
    lowest,
    highest,
    held: silence === undefined && ratio !== Math.exp(score),
    shiftSigmaPx: Math.hypot(match.peakSigmaPx, driftShare * match.leverPx),
    null: {
      photoStrips: own.length,
      photoReached: own.filter((each) => each >= match.correlation).length,
      photoTypical: Math.tanh(mean),
      photoHigh: Math.tanh(mean + sd),
      shippedPairs: pairsOfTwo,
      shippedReached: shareAbove(shipped.correlations.two, match.correlation),
      onePiecePairs: pairsOfOne,
    },
  };
}

/** The share of a set that reaches a value, from its quantiles. */
function shareAbove(quantiles: readonly number[], value: number): number {
  const reached = quantiles.findIndex((each) => each >= value);
  if (reached === -1) return 0;
  if (reached === 0) return 1;
  const [low, high] = [quantiles[reached - 1] as number, quantiles[reached] as number];
  const share = high > low ? (value - low) / (high - low) : 1;
  return 1 - (reached - 1 + share) / (quantiles.length - 1);
}
