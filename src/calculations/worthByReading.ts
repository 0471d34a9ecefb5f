import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { toldShares } from '../weighing/probabilityWords.ts';
import {
  bestOf,
  examinationWorth,
  expectedValue,
  hangingOnDoubt,
  mixedQuantile,
  type ValuedReading,
} from '../worth/byReading.ts';
import { defineCalculation } from './define.ts';

const share = z.number().min(0).max(1);
const sum = z.number().min(0).max(1e12);
const value = z.union([z.tuple([sum, sum]), z.strictObject({ low: sum, high: sum, best: sum.optional() })]);

const input = z.strictObject({
  /** How probable each reading is. */
  posterior: z.record(z.string().min(1), share),
  /** What the piece would be worth under each, as the examiner sets it: [low, high], or with the best figure between. */
  values: z.record(z.string().min(1), value),
  /** What it can be bought for, where that is to be decided. */
  price: sum.optional(),
  /** An examination still to be made: for each outcome how probable it is under each reading. */
  examination: z
    .strictObject({
      name: z.string().max(200).default(''),
      cost: sum.optional(),
      outcomes: z
        .array(z.strictObject({ name: z.string(), given: z.record(z.string(), share) }))
        .min(2)
        .max(20),
    })
    .optional(),
});
type Input = z.infer<typeof input>;

const examined = z.strictObject({ lessAtStake: z.number(), forBuyer: z.number().optional() });

/** `worth.byReading`: see its own fields. */
export const worthByReading = defineCalculation({
  id: 'worth.byReading',
  answers:
    'What is the piece worth over all its readings, how much of that hangs on the doubt, and what is a further examination worth?',
  method:
    'expected is the mean of the best figures (the middle of a range where none is given) by the probabilities, which are brought to 1. low and high hold 90 in 100: the readings mixed by their probabilities, each with half of it evenly below its best figure and half above. atStake is what hangs on the ' +
    'doubt: how far, on average, the worth under the reading that is true lies from expected; 0 where the reading is certain. A reading that is probable and has no value is a fault: none is guessed. settled is an examination that would answer all, which none surpasses; examination is the one asked about: ' +
    'lessAtStake by how much atStake falls on average, forBuyer by how much one who may buy at price is better off who examines first. A middle value over readings is what nobody would pay on the day the answer is known: print the ranges beside it.',
  source:
    'Expected worth and the value of information: Raiffa and Schlaifer (1961), from memory. The ranges are the examiner’s.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    expected: z.number(),
    low: z.number(),
    high: z.number(),
    atStake: z.number(),
    readings: z.array(
      z.strictObject({
        id: z.string(),
        probability: z.number(),
        low: z.number(),
        best: z.number(),
        high: z.number(),
      }),
    ),
    settled: examined,
    examination: examined.extend({ forBuyerLessCost: z.number().optional() }).optional(),
  }),
  example: {
    posterior: { 'period-intact': 0.5, 'period-altered': 0.3, 'later-bench-copy': 0.2 },
    values: {
      'period-intact': [20000, 30000],
      'period-altered': { low: 4000, high: 9000, best: 6000 },
      'later-bench-copy': [800, 1500],
    },
    price: 12000,
  },
  run: (asked) => {
    const faults = faultsOf(asked);
    if (faults.length > 0) return { ok: false, faults };
    const readings = readingsOf(asked);
    const { examination, price } = asked;
    const tail = (1 - toldShares.most) / 2;
    const made =
      examination === undefined ? undefined : examinationWorth(readings, price, examination.outcomes);
    return {
      ok: true,
      output: {
        expected: expectedValue(readings),
        low: mixedQuantile(readings, tail),
        high: mixedQuantile(readings, 1 - tail),
        atStake: hangingOnDoubt(readings),
        readings: readings.map(({ id, probability, value: range }) => ({
          id,
          probability,
          low: range.low,
          best: bestOf(range),
          high: range.high,
        })),
        settled: examinationWorth(readings, price),
        ...(made === undefined
          ? {}
          : {
              examination: {
                ...made,
                ...(made.forBuyer === undefined || examination?.cost === undefined
                  ? {}
                  : { forBuyerLessCost: made.forBuyer - examination.cost }),
              },
            }),
      },
    };
  },
});

function readingsOf({ posterior, values }: Input): ValuedReading[] {
  const probable = Object.entries(posterior).filter(([, probability]) => probability > 0);
  const all = probable.reduce((total, [, probability]) => total + probability, 0);
  return probable.map(([id, probability]) => {
    const range = values[id] as Input['values'][string];
    return {
      id,
      probability: probability / all,
      value: Array.isArray(range) ? { low: range[0], high: range[1] } : range,
    };
  });
}

function faultsOf({ posterior, values, examination }: Input): Fault[] {
  const probable = Object.entries(posterior).filter(([, probability]) => probability > 0);
  if (probable.length === 0)
    return [
      {
        code: 'worth.no-reading',
        path: 'posterior',
        message: 'No reading has a probability above 0: give one at least.',
      },
    ];
  const lacking = probable
    .filter(([id]) => values[id] === undefined)
    .map(([id]) => ({
      code: 'worth.no-value',
      path: `values.${id}`,
      message: `“${id}” has a probability and no value: say what the piece would be worth then.`,
    }));
  const backwards = Object.entries(values).flatMap(([id, range]) => {
    const [low, best, high] = Array.isArray(range)
      ? [range[0], range[0], range[1]]
      : [range.low, range.best ?? range.low, range.high];
    return low <= best && best <= high
      ? []
      : [
          {
            code: 'worth.range-backwards',
            path: `values.${id}`,
            message: `The figures ${low}, ${best} and ${high} do not rise: low first, then best, then high.`,
          },
        ];
  });
  const outcomes = examination?.outcomes ?? [];
  const uneven = probable.flatMap(([id]) => {
    const total = outcomes.reduce((all, { given }) => all + (given[id] ?? 0), 0);
    return outcomes.length === 0 || Math.abs(total - 1) < 1e-6
      ? []
      : [
          {
            code: 'worth.outcomes-uneven',
            path: 'examination.outcomes',
            message: `Under “${id}” the outcomes have ${total} together: their probabilities add up to 1.`,
          },
        ];
  });
  return [...lacking, ...backwards, ...uneven];
}
