import type { ReadingId } from '../piece/readings.ts';
import { type Evaluation, massesFor } from './evaluation.ts';
import { massesAfter } from './massesAfter.ts';
import { fixModel } from './model.ts';
import type { Look } from './prepareCase.ts';
import { leadingOf } from './readingMasses.ts';
import type { LookWeight } from './weights.ts';

/** A smallest set of findings whose reversal puts another reading first. */
export type Reversal = { looks: Look[]; to: ReadingId };

/**
 * The smallest sets of findings whose reversal (present for absent, absent for present) puts another reading first: every
 * single finding is tried, then every pair and at last triples among those that weigh most for the leading reading.
 *
 * @param most  how many sets to report
 */
export function wouldChange(
  evaluation: Evaluation,
  weights: readonly LookWeight[],
  leading: ReadingId,
  most = 5,
): Reversal[] {
  const singles = weights.flatMap((weight) => {
    const to = leadingOf(massesAfter(evaluation, weight.look, reversed(evaluation.looks, [weight.look])));
    return to === leading ? [] : [{ looks: [weight.look], to }];
  });
  if (singles.length > 0) return singles.slice(0, most);
  const heavy = weights.toSorted((a, b) => b.forLeading - a.forLeading).map((weight) => weight.look);
  for (const [size, pool] of [
    [2, 10],
    [3, 7],
    [4, 6],
    [5, 5],
  ] as const) {
    const found: Reversal[] = [];
    for (const set of subsets(heavy.slice(0, pool), size)) {
      const to = leadingAfter(evaluation, set);
      if (to !== leading) found.push({ looks: set, to });
      if (found.length === most) break;
    }
    if (found.length > 0) return found;
  }
  return [];
}

function leadingAfter(evaluation: Evaluation, set: readonly Look[]): ReadingId {
  const looks = reversed(evaluation.looks, set);
  return leadingOf(massesFor(fixModel(evaluation.model.layout, evaluation.model.draw, looks), looks));
}

function reversed(looks: readonly Look[], set: readonly Look[]): Look[] {
  return looks.map((look) =>
    set.includes(look) ? { ...look, state: look.state === 'present' ? 'absent' : 'present' } : look,
  );
}

function* subsets<T>(pool: readonly T[], size: number, from = 0): Generator<T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= pool.length - size; i++) {
    for (const rest of subsets(pool, size - 1, i + 1)) yield [pool[i] as T, ...rest];
  }
}
