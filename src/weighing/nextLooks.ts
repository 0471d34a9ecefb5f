import { bestDraw } from '../evidence/figures.ts';
import type { Look, PreparedCase } from '../evidence/preparedCase.ts';
import { sum } from '../ground/statistics.ts';
import { readingIds } from '../piece/readings.ts';
import { evaluate } from '../summation/evaluate.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { type PartJoints, partJoints } from '../summation/partJoints.ts';
import { posteriorSeen } from '../summation/posteriorSeen.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import { inOrder, newWitness, openLooks, proposed } from './openLooks.ts';
import type { Weighing } from './weighing.ts';

/**
 * For every sign not yet looked for: by how many bits looking is expected to lower the doubt over the readings.
 * Most telling for the time it takes first.
 *
 * @param answered  keys of signs already answered, in whatever way
 * @source the mutual information of the reading and the finding, Shannon 1948
 */
export function nextLooks(prepared: PreparedCase, answered: ReadonlySet<string>): Weighing['nextLooks'] {
  // Every shop has its say here: a habit not yet looked for may be what proves one.
  const evaluation = evaluate(fixModel(layOut(prepared, true), bestDraw()));
  const now = entropy(readingIds.map((id) => evaluation.posterior.readings[id]));
  // What a sign tells of an alteration is the same wherever it is seen.
  const told = new Map<string, number>();
  const shown = new Map<string, Float64Array>();
  const looks = openLooks(prepared, answered).flatMap(({ part, looks: open }) => {
    const joints = partJoints(evaluation, part, shown);
    return open.map((look) => {
      const bits = Math.max(0, now - doubtAfter(evaluation, joints, look, told)) * newWitness(prepared, look);
      return proposed(look, part, prepared, bits);
    });
  });
  return inOrder(looks, prepared);
}

function doubtAfter(
  evaluation: Evaluation,
  joints: PartJoints,
  look: Look,
  told: Map<string, number>,
): number {
  const posterior = () => posteriorSeen(evaluation, joints, look);
  if (!look.sign.hangsOn.startsWith('alteration/')) return expectedEntropy(evaluation, posterior());
  const doubt = told.get(look.sign.id) ?? expectedEntropy(evaluation, posterior());
  told.set(look.sign.id, doubt);
  return doubt;
}

/** Doubt left over the readings, on average, after a look: seen or not, each as probable as now believed. */
function expectedEntropy(evaluation: Evaluation, seen: Posterior): number {
  const scale = Math.exp(seen.log - evaluation.posterior.log);
  const present = readingIds.map((id) =>
    Math.min(seen.readings[id] * scale, evaluation.posterior.readings[id]),
  );
  const absent = readingIds.map((id, i) =>
    Math.max(0, evaluation.posterior.readings[id] - (present[i] ?? 0)),
  );
  const seenTotal = sum(present);
  const unseenTotal = sum(absent);
  const total = seenTotal + unseenTotal;
  return total > 0 ? (seenTotal * entropy(present) + unseenTotal * entropy(absent)) / total : 0;
}

/** Entropy in bits of posterior on any scale. */
function entropy(posterior: readonly number[]): number {
  const total = sum(posterior);
  return total > 0
    ? posterior.reduce((bits, mass) => (mass > 0 ? bits - (mass / total) * Math.log2(mass / total) : bits), 0)
    : 0;
}
