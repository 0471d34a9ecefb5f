import { type ReadingId, readingIds, readingWords } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { shares } from '../summation/readingPosterior.ts';
import type { Weighing } from './weighing.ts';
import type { LookWeight } from './weights.ts';

/** A reading below this is no candidate to explain anything; above this conflict it explains the findings badly. */
const candidate = 0.01;
const tooMuchDecibans = 10;

/**
 * Whether none of the readings explains the findings: under each one that is still a candidate, the findings together
 * are at least ten times less probable than they would be if each came up by itself.
 *
 * @source the conflict measure of F. V. Jensen, B. Chamberlain, T. Nordahl and F. Jensen (1990), taken within each
 *   reading: log of the product of the single probabilities over the joint one; from memory
 */
export function unexplained(evaluation: Evaluation, weights: readonly LookWeight[]): Weighing['unexplained'] {
  const { posterior, looks } = evaluation;
  if (!(posterior.total > 0))
    return { unexplained: true, reason: 'The findings cannot all be true of one piece under any reading.' };
  if (looks.length < 2) return { unexplained: false, reason: 'Too few findings to clash.' };
  const conflicts = conflictDecibans(evaluation, weights);
  const probability = shares(posterior);
  const candidates = readingIds.filter((id) => probability[id] >= candidate);
  const least = candidates.reduce(
    (best, id) => (conflicts[id] < conflicts[best] ? id : best),
    candidates[0] ?? 'period-intact',
  );
  const value = Math.round(conflicts[least]);
  return conflicts[least] >= tooMuchDecibans
    ? {
        unexplained: true,
        reason: `Under every reading the findings clash: even for ${readingWords[least].inSentence} they are ${value} decibans less probable together than one by one. Something outside the list may explain them.`,
      }
    : {
        unexplained: false,
        reason: `The findings hang together under at least one reading (${readingWords[least].inSentence}).`,
      };
}

/** For each reading, how much less probable the findings are together than one by one, in decibans. */
function conflictDecibans(evaluation: Evaluation, weights: readonly LookWeight[]): Record<ReadingId, number> {
  const bare = weights[0]?.before ?? evaluation.posterior;
  const logs = Object.fromEntries(readingIds.map((id) => [id, 0])) as Record<ReadingId, number>;
  for (const { byItself } of weights) {
    for (const id of readingIds)
      logs[id] += logOf(byItself.readings[id], bare.readings[id]) + byItself.log - bare.log;
  }
  return Object.fromEntries(
    readingIds.map((id) => {
      const joint =
        logOf(evaluation.posterior.readings[id], bare.readings[id]) + evaluation.posterior.log - bare.log;
      return [id, ((logs[id] - joint) * 10) / Math.LN10];
    }),
  ) as Record<ReadingId, number>;
}

function logOf(mass: number, before: number): number {
  return mass > 0 && before > 0 ? Math.log(mass / before) : -700;
}
