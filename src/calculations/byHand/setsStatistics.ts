import { z } from 'zod';
import { algorithmA, describeValues, huberEstimates } from '../../sets/describeValues.ts';
import { dixon } from '../../sets/dixon.ts';
import { grubbs } from '../../sets/robustOutliers.ts';
import { grubbsCritical } from '../../sets/studentT.ts';
import { defineCalculation } from '../define.ts';

const input = z.strictObject({
  /** Measurements of one thing, or of things that should be alike, in the order they were taken. */
  values: z.array(z.number().min(-1e12).max(1e12)).min(2).max(100_000),
  /** How often Grubbs’ test may call out one of values that are alike. */
  alpha: z.number().min(0.0001).max(0.2).default(0.05),
});

/** `sets.statistics`: see its own fields. */
export const setsStatistics = defineCalculation({
  id: 'sets.statistics',
  answers: 'What are these measurements like, and does one of them stand out?',
  method:
    'Mean, standard deviation (n − 1), correlation of each value with the next (null where all are alike), median, median absolute deviation and the same times 1.4826, quartiles by linear interpolation, mean without the lowest and highest tenth (whole values). ' +
    'robust is algorithm A: values beyond 1.5 standard deviations are drawn in, until nothing moves; huber draws in by the scaled median deviation, and by a scale estimated along (proposal 2). Grubbs: the value furthest from the mean in standard deviations, with the critical values one- and two-sided; standsOut is by the two-sided one; from 3 values, null where all are alike. ' +
    'Dixon: the outermost gap over the range, 3 to 10 values, at 90 and 95 in 100; else null. Both take values that are normal but for one: with two wild ones each hides the other, where sets.likeness does not fail.',
  source:
    'ISO 13528 for algorithm A, Grubbs (1969), Dixon (1951) with the critical values of Rorabacher (1991); all from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    count: z.int(),
    mean: z.number(),
    sd: z.number(),
    lag1: z.number().nullable(),
    median: z.number(),
    mad: z.number(),
    madScaled: z.number(),
    quartiles: z.tuple([z.number(), z.number()]),
    trimmedMean: z.number(),
    robust: z.strictObject({ mean: z.number(), sd: z.number() }),
    huber: z.strictObject({
      mean: z.number(),
      proposal2: z.strictObject({ mean: z.number(), sd: z.number() }),
    }),
    grubbs: z
      .strictObject({
        value: z.number(),
        G: z.number(),
        criticalOneSided: z.number(),
        critical: z.number(),
        standsOut: z.boolean(),
      })
      .nullable(),
    dixon: z
      .strictObject({
        low: z.number(),
        high: z.number(),
        value: z.number(),
        at90: z.boolean(),
        at95: z.boolean(),
      })
      .nullable(),
  }),
  example: { values: [432, 430, 433, 431, 409, 432] },
  run: ({ values, alpha }) => {
    const { lag1, ...described } = describeValues(values);
    return {
      ok: true,
      output: {
        count: values.length,
        ...described,
        lag1: lag1 ?? null,
        robust: algorithmA(values),
        huber: huberEstimates(values),
        grubbs: grubbsOf(values, alpha),
        dixon: dixon(values) ?? null,
      },
    };
  },
});

function grubbsOf(values: readonly number[], alpha: number) {
  const { G, index } = grubbs(values);
  if (values.length < 3 || !(G > 0)) return null;
  const critical = grubbsCritical(values.length, alpha, 2);
  return {
    value: values[index] as number,
    G,
    criticalOneSided: grubbsCritical(values.length, alpha, 1),
    critical,
    standsOut: G > critical,
  };
}
