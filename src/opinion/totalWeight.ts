import type { Weighing } from '../evidence/weighing.ts';
import type { Making } from '../knowledge/schema.ts';
import type { ReadingId } from '../piece/readings.ts';

/** The readings in which the main body is of the period. */
const ofThePeriod: readonly ReadingId[] = ['period-intact', 'period-repaired', 'period-altered', 'made-up'];

/**
 * What all findings together do for a period piece against any later one: the odds after over the odds before.
 *
 * Shown probabilities end at 1 and 999 in 1000, so a strong weight is a bound: `atLeast` says where it is.
 *
 * @returns undefined where the starting odds are not known, or leave one side nothing
 * @source I. J. Good (1950): weight of evidence as the change of log odds; from memory
 */
export function totalWeight(
  weighing: Pick<Weighing, 'readings'>,
  making: Pick<Making, 'startingOdds' | 'defaultOdds'>,
  odds: string | undefined,
): { decibans: number; atLeast: boolean } | undefined {
  const start = making.startingOdds[odds ?? making.defaultOdds] ?? making.startingOdds[making.defaultOdds];
  if (start === undefined) return undefined;
  const sum = (of: boolean) =>
    weighing.readings
      .filter(({ id }) => ofThePeriod.includes(id) === of)
      .reduce((total, { probability }) => total + probability, 0);
  const before = start.period / (start['bench-copy'] + start['machine-copy'] + start['to-deceive']);
  const bound = weighing.readings.some(({ probability }) => probability <= 0.001 || probability >= 0.999);
  const [own, later] = [sum(true), sum(false)];
  const decibans = 10 * Math.log10(own / later / before);
  if (!Number.isFinite(decibans)) return undefined;
  return {
    decibans,
    atLeast: bound && Math.min(own, later) <= 0.01,
  };
}
