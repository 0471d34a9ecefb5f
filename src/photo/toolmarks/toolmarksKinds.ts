import { sum } from '../../ground/statistics.ts';
import { farFromClouds, type MarkCloud } from './toolmarksClouds.ts';
import type { MarksEdge } from './toolmarksEdge.ts';
import { type MarkKind, markKinds } from './toolmarksNamed.ts';
import trained from './toolmarksTrained.json' with { type: 'json' };

/** What marks say of the tool, as likelihoods; the largest is 1. */
export type MarkOdds = {
  kind: MarkKind | 'cannot-tell';
  likelihoods: Record<MarkKind, number>;
  /** How probable the trained rule holds it that there are no marks to speak of, all seven alike before. */
  noMarks: number;
  /** Why it can’t tell. */
  why: 'no marks' | 'two kinds alike' | 'unlike anything tried' | 'an edge' | undefined;
};

/** What was learned from drawn surfaces: made by scripts/trainToolmarks.ts. */
export type TrainedMarks = {
  /** Mean and standard deviation of each feature in training. */
  mean: number[];
  sd: number[];
  /** Kind by kind, `none` last: a constant, then a weight for each scaled feature and for its square. */
  weights: number[][];
  /** What the scores are divided by, set on surfaces of other seeds. */
  temperature: number;
  /** Kind by kind, `none` last, in scaled features; and how far from all of them the last half in 100 of drawn surfaces lies. */
  clouds: MarkCloud[];
  farthest: number;
};

/** Nothing but drawn surfaces is proven, so that marks speak at most so many times for one tool: a judgement. */
export const mostMarksRatio = 8;

/** A straight edge this clear over the spread within its sides is not of the marks: none of 1120 surfaces drawn without one has it. */
const clearEdge = { clear: 1.3, step: 0.08 } as const;

/** Scaled features are held within so many standard deviations. */
const heldAt = 3.5;

/**
 * How likely each way of working was to leave these marks.
 *
 * Method: softmax over scores that are quadratic in the scaled features, learned from drawn surfaces, its temperature set on others. What
 * the rule gives to *no marks* is shared out among the kinds, for any mark may have worn away. Ratios stay within 1/8 to 8. It can’t tell
 * where no marks are more probable than not, where no kind reaches 7 in 10, where a clear straight edge parts the region, or where the features lie farther
 * from every kind’s cloud than 99.5 in 100 of drawn surfaces; in the last two and the first all likelihoods are 1.
 *
 * @param features  in the order of `MarkMeasures`
 * @param edge      the region’s strongest
 * @source ours: multinomial logistic regression (common practice), calibrated by temperature (Guo and others 2017, from memory)
 */
export function markOdds(features: readonly number[], edge: MarksEdge, by: TrainedMarks = trained): MarkOdds {
  const shares = markShares(features, by);
  const noMarks = shares[markKinds.length] as number;
  const each = markKinds.map((_, index) => (shares[index] as number) + noMarks / markKinds.length);
  const most = Math.max(...each);
  const likelihoods = Object.fromEntries(
    markKinds.map((kind, index) => [kind, Math.max(1 / mostMarksRatio, (each[index] as number) / most)]),
  ) as Record<MarkKind, number>;
  const best = shares.slice(0, markKinds.length);
  const isEdged = edge.clear >= clearEdge.clear && edge.step >= clearEdge.step;
  const why = isEdged
    ? 'an edge'
    : farFromClouds(scaledFeatures(features, by), by.clouds) > by.farthest
      ? 'unlike anything tried'
      : noMarks > 0.5
        ? 'no marks'
        : Math.max(...best) < 0.7
          ? 'two kinds alike'
          : undefined;
  const unsure = why !== undefined && why !== 'two kinds alike';
  const even = Object.fromEntries(markKinds.map((kind) => [kind, 1])) as Record<MarkKind, number>;
  return {
    kind: why === undefined ? (markKinds[best.indexOf(Math.max(...best))] as MarkKind) : 'cannot-tell',
    likelihoods: unsure ? even : likelihoods,
    noMarks,
    why,
  };
}

/** The trained rule’s shares of the six kinds and of none, summing to 1. */
export function markShares(
  features: readonly number[],
  by: Pick<TrainedMarks, 'mean' | 'sd' | 'weights' | 'temperature'>,
): number[] {
  const terms = markTerms(features, by);
  const scores = by.weights.map(
    (weights) =>
      weights.reduce((sum, weight, index) => sum + weight * (terms[index] as number), 0) / by.temperature,
  );
  const top = Math.max(...scores);
  const shares = scores.map((score) => Math.exp(score - top));
  const all = sum(shares);
  return shares.map((share) => share / all);
}

/** A constant, the scaled features and their squares. */
export function markTerms(
  features: readonly number[],
  { mean, sd }: Pick<TrainedMarks, 'mean' | 'sd'>,
): number[] {
  const scaled = scaledFeatures(features, { mean, sd }).map((z) => Math.min(heldAt, Math.max(-heldAt, z)));
  return [1, ...scaled, ...scaled.map((z) => z * z - 1)];
}

/** Features less their mean in training, over their standard deviation there. */
export function scaledFeatures(
  features: readonly number[],
  { mean, sd }: Pick<TrainedMarks, 'mean' | 'sd'>,
): number[] {
  return features.map((value, index) => (value - (mean[index] as number)) / (sd[index] as number));
}
