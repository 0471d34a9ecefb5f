import type { Look } from '../evidence/preparedCase.ts';
import { type Steps, stepByStep } from '../ground/steps.ts';
import type { ReadingId } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { posteriorWithout } from '../summation/posteriorAfter.ts';
import { type SharedCause, sharedCauses } from './sharedCauses.ts';
import { forLeading, type LookWeight, type WeightInWhole, weightInWhole } from './weights.ts';

/** Findings of one cause, and what they do together. */
export type ReasonGroup = WeightInWhole & { cause: SharedCause; looks: readonly Look[] };

/**
 * What the findings of each shared cause do together for the leading reading: the whole against the whole without them,
 * summed anew where they stand on several parts. The weightiest first; those that make a limit before all,
 * those that stand beside a limit others make last.
 */
export function* reasonGroups(
  evaluation: Evaluation,
  weights: readonly LookWeight[],
  leading: ReadingId,
): Steps<ReasonGroup[]> {
  const before = weights[0]?.before ?? evaluation.posterior;
  const groups = yield* stepByStep(sharedCauses(evaluation), ({ cause, looks }) => {
    const without = posteriorWithout(evaluation, looks);
    const whole = weightInWhole(evaluation, leading, weights, before, without, looks);
    const size = Math.abs(forLeading({ withinWhole: whole.withinWhole, without }, leading));
    return { size, group: { cause, looks, ...whole } };
  });
  return groups.sort((a, b) => (a.size === b.size ? 0 : b.size - a.size)).map(({ group }) => group);
}
