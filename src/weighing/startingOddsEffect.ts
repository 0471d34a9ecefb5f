import type { PreparedCase } from '../evidence/preparedCase.ts';
import type { Making } from '../evidence/worlds.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import type { Weighing } from './weighing.ts';

/** The making that each reading is of. */
export const makingOf: Record<ReadingId, Making> = {
  'period-intact': 'period',
  'period-repaired': 'period',
  'period-altered': 'period',
  'made-up': 'period',
  'later-bench-copy': 'bench-copy',
  'later-machine-copy': 'machine-copy',
  'made-to-deceive': 'to-deceive',
};

/** How the readings would stand under each of the starting odds: the same findings, other odds before them. */
export function startingOddsEffect(prepared: PreparedCase, posterior: Posterior): Weighing['byStartingOdds'] {
  const { startingOdds } = prepared.knowledge.making;
  const used = startingOdds[prepared.odds];
  if (used === undefined) return [];
  return Object.entries(startingOdds).map(([odds, other]) => {
    const mass = Object.fromEntries(
      readingIds.map((id) => [
        id,
        (posterior.readings[id] * other[makingOf[id]]) / Math.max(used[makingOf[id]], 1e-12),
      ]),
    ) as Record<ReadingId, number>;
    const total = readingIds.reduce((sum, id) => sum + mass[id], 0);
    const probabilities = Object.fromEntries(
      readingIds.map((id) => [id, Math.min(0.999, Math.max(0.001, total > 0 ? mass[id] / total : 0))]),
    ) as Record<ReadingId, number>;
    const leading = readingIds.reduce((best, id) => (mass[id] > mass[best] ? id : best), readingIds[0]);
    return { odds, leading, probabilities };
  });
}
