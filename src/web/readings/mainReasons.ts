import type { Weighing } from '../../evidence/weighing.ts';

type Weight = Weighing['weights'][number];

/**
 * The findings that weigh most within the whole on the side of the leading reading, and on the other side: both are told.
 * Where the others leave a finding nothing to add, what it weighs by itself counts. Less than a deciban is on neither side.
 */
export function mainReasons(weighing: Pick<Weighing, 'weights'>): {
  forIt: Weight[];
  againstIt: Weight[];
} {
  const telling = ({ withinWhole, alone }: Weight) =>
    withinWhole !== null && Math.abs(withinWhole) >= 1 ? withinWhole : (alone ?? 0) / 10;
  const heavy = weighing.weights
    .filter((each) => Math.max(Math.abs(each.withinWhole ?? 0), Math.abs(each.alone ?? 0)) >= 1)
    .toSorted((a, b) => Math.abs(telling(b)) - Math.abs(telling(a)));
  return {
    forIt: heavy.filter((each) => telling(each) > 0).slice(0, 4),
    againstIt: heavy.filter((each) => telling(each) < 0).slice(0, 2),
  };
}
