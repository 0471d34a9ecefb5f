import { z } from 'zod';
import { refuse } from '../ground/fault.ts';
import type { ConsumerPrices } from '../knowledge/consumerPrices.ts';
import { indexedAmount, toFigures } from '../worth/priceIndex.ts';
import { type CalculationResult, defineCalculation } from './define.ts';

const year = z.int().min(1000).max(2200);
const index = z.number().positive().max(1e9);

const input = z.strictObject({
  amount: z.number().min(0).max(1e12),
  fromYear: year.optional(),
  toYear: year.optional(),
  /** Two values of any index, in place of the years. */
  indices: z.strictObject({ from: index, to: index }).optional(),
});
type Input = z.infer<typeof input>;
type Indices = { from: number; to: number; remarks: string[]; series: string; figures: number };

const limits =
  'Consumer prices measure a household’s basket, not old furniture: this is context for a reader and no evidence of a present worth.';

/** `worth.index`: see its own fields. */
export const worthIndex = defineCalculation({
  id: 'worth.index',
  answers: 'What would a sum of one year be in the money of another, by consumer prices?',
  method:
    'amount × index of toYear ÷ index of fromYear, the yearly means of the series in knowledge/consumer-prices.yaml; or by the two values in indices. Dollars of the United States, from 1913. rounded has as many figures as the index carries: ' +
    'three, or two where a year before 1940 is taken. A year of which months are missing is named in remarks. The sum as it was paid is to be kept and printed beside it.',
  source:
    'U.S. Bureau of Labor Statistics, CPI-U (series CUUR0000SA0), and Using the Consumer Price Index for Escalation (1989), of which an example was read.',
  input,
  output: z.strictObject({
    amount: z.number(),
    rounded: z.number(),
    factor: z.number(),
    pointChange: z.number(),
    percentChange: z.number(),
    indices: z.strictObject({ from: z.number(), to: z.number() }),
    series: z.string(),
    remarks: z.array(z.string()),
  }),
  example: { amount: 150, fromYear: 1925, toYear: 2024 },
  run: (asked, { knowledge }) => {
    const found = indicesOf(asked, knowledge?.consumerPrices);
    if (!found.ok) return found;
    const { from, to, remarks, series, figures } = found.output;
    const indexed = indexedAmount(asked.amount, from, to);
    const rounded = toFigures(indexed.amount, figures);
    return {
      ok: true,
      output: { ...indexed, rounded, indices: { from, to }, series, remarks: [...remarks, limits] },
    };
  },
});

function indicesOf(asked: Input, prices: ConsumerPrices | undefined): CalculationResult<Indices> {
  const { fromYear, toYear, indices } = asked;
  if (indices !== undefined)
    return { ok: true, output: { ...indices, remarks: [], series: 'as handed in', figures: 3 } };
  if (fromYear === undefined || toYear === undefined)
    return refuse(
      'worth.years-missing',
      'Give fromYear and toYear, or two values of an index as indices.',
      'fromYear',
    );
  if (prices === undefined)
    return refuse(
      'worth.no-index',
      'knowledge/consumer-prices.yaml is missing: give two values of an index as indices.',
      'fromYear',
    );
  const [from, to] = [prices.means[fromYear], prices.means[toYear]];
  if (from === undefined) return refuse('worth.year-not-known', notKnown(fromYear, prices), 'fromYear');
  if (to === undefined) return refuse('worth.year-not-known', notKnown(toYear, prices), 'toYear');
  const remarks = [fromYear, toYear].flatMap((each) => {
    const months = prices.partYears[each];
    return months === undefined ? [] : [`Of ${each} the series has ${months} months only: provisional.`];
  });
  const figures = Math.min(fromYear, toYear) < prices.roundedBefore ? 2 : 3;
  return {
    ok: true,
    output: { from, to, remarks, series: `${prices.name}, data of ${prices.dataOf}`, figures },
  };
}

function notKnown(year_: number, { means }: ConsumerPrices): string {
  const years = Object.keys(means).map(Number);
  return `The series has no year ${year_}: it goes from ${Math.min(...years)} to ${Math.max(...years)}.`;
}
