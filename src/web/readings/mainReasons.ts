import type { Weighing } from '../../evidence/weighing.ts';
import type { ReadingId } from '../../piece/readings.ts';

type Weight = Weighing['weights'][number];

const ofThePeriod: readonly ReadingId[] = ['period-intact', 'period-repaired', 'period-altered', 'made-up'];

/**
 * The findings that weigh most within the whole on the side of the leading reading, and on the other side: both are told.
 * Where the others leave a finding nothing to add, what it weighs by itself counts. Less than a deciban is on neither side.
 */
export function mainReasons(weighing: Pick<Weighing, 'leading' | 'weights'>): {
  forIt: Weight[];
  againstIt: Weight[];
} {
  const side = ofThePeriod.includes(weighing.leading) ? 1 : -1;
  const telling = (weight: Weight) =>
    Math.abs(weight.withinWhole) >= 1 ? weight.withinWhole : weight.alone / 10;
  const heavy = weighing.weights
    .filter((each) => Math.max(Math.abs(each.withinWhole), Math.abs(each.alone)) >= 1)
    .toSorted((a, b) => Math.abs(telling(b)) - Math.abs(telling(a)));
  return {
    forIt: heavy.filter((each) => telling(each) * side > 0).slice(0, 4),
    againstIt: heavy.filter((each) => telling(each) * side < 0).slice(0, 2),
  };
}
