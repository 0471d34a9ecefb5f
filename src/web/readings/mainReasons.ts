import type { Weighing } from '../../evidence/weighing.ts';
import type { ReadingId } from '../../piece/readings.ts';
import { heaviestFirst } from './speaksFor.ts';

type Weight = Weighing['weights'][number];

const ofThePeriod: readonly ReadingId[] = ['period-intact', 'period-repaired', 'period-altered', 'made-up'];

/**
 * The findings that weigh most by themselves on the side of the leading reading, and on the other side: both are told.
 * Those that weigh less than a deciban are on neither.
 */
export function mainReasons(weighing: Pick<Weighing, 'leading' | 'weights'>): {
  forIt: Weight[];
  againstIt: Weight[];
} {
  const side = ofThePeriod.includes(weighing.leading) ? 1 : -1;
  const heavy = heaviestFirst(weighing.weights, 'alone').filter((each) => Math.abs(each.alone) >= 1);
  return {
    forIt: heavy.filter((each) => each.alone * side > 0).slice(0, 4),
    againstIt: heavy.filter((each) => each.alone * side < 0).slice(0, 2),
  };
}
