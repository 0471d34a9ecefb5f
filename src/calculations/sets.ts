import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { leastNumbers, type SizePrior, setSize } from '../sets/setSize.ts';
import { defineCalculation } from './define.ts';

const number = z.int().min(1).max(10_000);
const size = z.int().min(1).max(100_000);

const input = z.strictObject({
  /** The numbers found, each once. */
  numbersSeen: z.array(number).min(1).max(1000),
  /** What is thought of the size before: every size alike up to `max`, or single sizes with their weights. */
  prior: z
    .union([
      z.strictObject({ max: size }),
      z.strictObject({
        sizes: z
          .array(z.strictObject({ n: size, p: z.number().min(0) }))
          .min(1)
          .max(1000),
      }),
    ])
    .optional(),
  /** Whether the numbering began with 1; unknown for inventory numbers of a house. */
  first: z.enum(['one', 'unknown']).default('one'),
  /** Shares whose sizes are wanted: 0.9 for the smallest size that holds nine tenths. */
  shares: z.array(z.number().min(0.001).max(0.995)).max(100).optional(),
});
type Input = z.infer<typeof input>;

/** `sets.size`: see its own fields. */
export const setsSize = defineCalculation({
  id: 'sets.size',
  answers: 'How many pieces did the set have, by the numbers on those that are left?',
  method:
    'The pieces were numbered from 1 to N, and which are left has nothing to do with their numbers. unbiased is m + m/k − 1, with the largest ' +
    'of k numbers m. The posterior weighs each N from m up by 1/C(N, k) and the prior; with no prior every size counts alike without end, which ' +
    'needs two numbers, and the list stops where 99 in 100 is told (or at 2000 sizes; listed says how much is). median is the smallest size that 50 in 100 do not ' +
    'pass; p90 leaves out 5 in 100 at either end; quantiles answers shares. With first unknown the run may lie anywhere over the numbers seen: unbiased is (largest − smallest)(k + 1)/(k − 1) − 1 and run adds the mean gap less 1 at either end, each size from ' +
    'r = largest − smallest + 1 up weighs (N − r + 1)/C(N, k), and without a prior three numbers are needed. Sets sold off from one end, or numbered across several rooms, break the assumption.',
  source:
    'The serial-number problem: Goodman (1952) for the unbiased estimate, from memory; the posterior is Bayes’ rule in closed form.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    unbiased: z.number(),
    posterior: z.array(z.tuple([z.number().int(), z.number()])),
    listed: z.number(),
    median: z.number().int(),
    p90: z.tuple([z.number().int(), z.number().int()]),
    /** null where it has no end, and without a prior where the first number is unknown. */
    mean: z.number().nullable(),
    sd: z.number().nullable(),
    quantiles: z.array(z.tuple([z.number(), z.number().int()])).optional(),
    /** First and last number of the run by the unbiased estimate, where the first number is unknown; may be broken. */
    run: z.tuple([z.number(), z.number()]).optional(),
  }),
  example: { numbersSeen: [3, 7, 11], prior: { max: 24 } },
  run: (asked) => {
    const faults = [...doubled(asked.numbersSeen), ...priorFaults(asked)];
    if (faults.length > 0) return { ok: false, faults };
    const { quantiles, run, ...size } = setSize(asked.numbersSeen, priorOf(asked), asked.first, asked.shares);
    return {
      ok: true,
      output: { ...size, ...(asked.shares ? { quantiles } : {}), ...(run ? { run } : {}) },
    };
  },
});

function priorOf({ prior }: Input): SizePrior {
  if (prior === undefined || 'max' in prior) return prior;
  return { sizes: prior.sizes.map(({ n, p }) => [n, p] as const) };
}

function doubled(numbers: readonly number[]): Fault[] {
  const again = numbers.find((each, index) => numbers.indexOf(each) < index);
  if (again === undefined) return [];
  const message = `${again} is there twice: no two pieces of one set bear one number, so take one out, or weigh the two sets apart.`;
  return [{ code: 'sets.number-twice', path: `numbersSeen[${numbers.lastIndexOf(again)}]`, message }];
}

function priorFaults(asked: Input): Fault[] {
  const { numbersSeen, prior, first } = asked;
  const [largest, smallest] = [Math.max(...numbersSeen), Math.min(...numbersSeen)];
  const least = first === 'one' ? largest : largest - smallest + 1;
  const needed = leastNumbers(priorOf(asked), first);
  if (numbersSeen.length < needed) return [tooFew(needed, prior !== undefined)];
  if (prior === undefined) return [];
  const path = 'max' in prior ? 'prior.max' : 'prior.sizes';
  if ('sizes' in prior && new Set(prior.sizes.map(({ n }) => n)).size < prior.sizes.length) {
    const message = 'A size is listed twice: give each size once, with its whole weight.';
    return [{ code: 'sets.size-twice', path, message }];
  }
  const most =
    'max' in prior ? prior.max : Math.max(0, ...prior.sizes.filter(({ p }) => p > 0).map(({ n }) => n));
  if (most >= least) return [];
  const seen =
    first === 'one' ? `The number ${largest} was seen` : `The numbers ${smallest} to ${largest} were seen`;
  const message = `${seen}, but the prior allows no more than ${most} pieces: give a size of at least ${least}.`;
  return [{ code: 'sets.prior-too-small', path, message }];
}

function tooFew(needed: number, hasPrior: boolean): Fault {
  if (hasPrior) {
    const message = 'One number says nothing where the first is unknown: give two or more.';
    return { code: 'sets.too-few', path: 'numbersSeen', message };
  }
  const few = needed === 2 ? 'One number alone sets' : 'Fewer than three numbers set';
  const message = `${few} no upper end: give the largest size you think possible, as prior: { max }.`;
  return { code: 'sets.prior-needed', path: 'prior', message };
}
