import type { Look } from '../evidence/preparedCase.ts';
import { type Steps, stepByStep } from '../ground/steps.ts';
import type { ReadingId } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { posteriorWithout } from '../summation/posteriorAfter.ts';
import { type SharedCause, sharedCauses } from './sharedCauses.ts';
import { type LookWeight, type WeightInWhole, weightInWhole } from './weights.ts';

/** Findings of one cause, and what they do together. */
export type ReasonGroup = WeightInWhole & { cause: SharedCause; looks: readonly Look[] };

/**
 * What the findings of each shared cause do together for the leading reading: the whole against the whole without them,
 * summed anew where they stand on several parts. The weightiest first; those that make a limit before all.
 */
export function* reasonGroups(
  evaluation: Evaluation,
  weights: readonly LookWeight[],
  leading: ReadingId,
): Steps<ReasonGroup[]> {
  const before = weights[0]?.before ?? evaluation.posterior;
  const size = (group: ReasonGroup) =>
    group.withinWhole === null ? Number.POSITIVE_INFINITY : Math.abs(group.withinWhole);
  const groups = yield* stepByStep(sharedCauses(evaluation), ({ cause, looks }) => ({
    cause,
    looks,
    ...weightInWhole(evaluation, leading, weights, before, posteriorWithout(evaluation, looks), looks),
  }));
  return groups.sort((a, b) => (size(a) === size(b) ? 0 : size(b) - size(a)));
}
