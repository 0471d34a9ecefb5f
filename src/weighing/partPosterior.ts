import type { ModelPart } from '../evidence/preparedCase.ts';
import { sourcesAtPart } from '../summation/atPart.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import type { Factor } from '../summation/factor.ts';
import type { Model } from '../summation/model.ts';
import { type YearSummary, yearSummary } from './highestDensity.ts';
import { type Origin, origins } from './origins.ts';

/** Where a part came from, as shares that sum to 1, and when it was made. */
export type PartPosterior = { origin: Record<Origin, number>; years: YearSummary };

const originOf = {
  own: 'of-the-making',
  repair: 'repair',
  improve: 'improve',
  old: 'other-old',
} as const satisfies Record<string, Origin>;

/** How probable each origin of a part is, and the years of its making, all else summed out exactly. */
export function partPosterior(evaluation: Evaluation, part: ModelPart): PartPosterior {
  const { prepared } = evaluation.model.layout;
  const origin: Record<Origin, number> = { 'of-the-making': 0, repair: 0, improve: 0, 'other-old': 0 };
  const years = new Float64Array(prepared.axis.bins);
  for (const { to, years: mass } of sourcesAtPart(evaluation, part.id)) {
    for (let bin = 0; bin < years.length; bin++) {
      origin[originOf[to]] += mass[bin] as number;
      years[bin] = (years[bin] as number) + (mass[bin] as number);
    }
  }
  const total = origins.reduce((sum, each) => sum + origin[each], 0);
  for (const each of origins)
    origin[each] = total > 0 ? origin[each] / total : each === 'of-the-making' ? 1 : 0;
  return { origin, years: yearSummary(prepared.axis, years, prepared.yearNow) };
}

/** The mass of a whole product by bin of the making. */
export function massByBin(model: Model, whole: Factor): Float64Array {
  const { cutsetStates, cells, cellCount, prepared } = model.layout;
  const mass = new Float64Array(prepared.axis.bins);
  const sums = whole.sums[0] as Float64Array;
  for (let m = 0; m < cutsetStates.length; m++) {
    for (const { first, count, offset } of cells) {
      const at = m * cellCount + offset;
      for (let i = 0; i < count; i++)
        mass[first + i] = (mass[first + i] as number) + (sums[at + i] as number);
    }
  }
  return mass;
}
