import { z } from 'zod';
import { refuse } from '../../ground/fault.ts';
import { repeatSalesIndex } from '../../worth/repeatSales.ts';
import { defineCalculation } from '../define.ts';

const period = z.number().min(-1e6).max(1e6);
const price = z.number().positive().max(1e12);

const input = z.strictObject({
  pairs: z
    .array(
      z.strictObject({
        firstPeriod: period,
        firstPrice: price,
        secondPeriod: period,
        secondPrice: price,
        item: z.string().optional(),
      }),
    )
    .min(1)
    .max(5000),
  /** One for each pair; all alike where left out. */
  weights: z.array(z.number().positive().max(1e6)).optional(),
});

/** `worth.repeat-sales`: see its own fields. */
export const worthRepeatSales = defineCalculation({
  id: 'worth.repeat-sales',
  answers: 'How did prices go from one period to the next, by pieces that were sold twice?',
  method:
    'Least squares of the log ratio of the two prices on −1 for the first period and +1 for the second, the earliest period as base; a weight multiplies a pair’s squared error. index is 100 in the earliest period. It speaks of pieces that came up twice, not of those that never did, and knows of no change in their condition between.',
  source: 'Bailey, Muth and Nourse (1963), from memory; held against values reckoned outside this program.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    periods: z.array(z.number()),
    index: z.array(z.number()),
    logIndex: z.array(z.number()),
    logIndexSd: z.array(z.number()),
    residualSd: z.number(),
  }),
  example: {
    pairs: [
      { firstPeriod: 1, firstPrice: 100, secondPeriod: 2, secondPrice: 120 },
      { firstPeriod: 2, firstPrice: 200, secondPeriod: 3, secondPrice: 220 },
      { firstPeriod: 1, firstPrice: 50, secondPeriod: 3, secondPrice: 66 },
    ],
  },
  run: ({ pairs, weights }) => {
    if (weights !== undefined && weights.length !== pairs.length)
      return refuse(
        'worth.weights',
        `There are ${pairs.length} pairs and ${weights.length} weights: give one for each.`,
        'weights',
      );
    const same = pairs.findIndex(({ firstPeriod, secondPeriod }) => firstPeriod === secondPeriod);
    if (same >= 0)
      return refuse(
        'worth.same-period',
        'Both sales of this pair fall into one period, which tells of no change: take the pair out.',
        `pairs[${same}]`,
      );
    const found = repeatSalesIndex(pairs, weights);
    return found === undefined
      ? refuse(
          'worth.not-linked',
          'These pairs do not link all the periods: add a pair that joins them, or take a period out.',
          'pairs',
        )
      : { ok: true, output: found };
  },
});
