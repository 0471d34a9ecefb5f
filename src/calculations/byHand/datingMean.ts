import { z } from 'zod';
import type { Fault } from '../../ground/fault.ts';
import { defineCalculation } from '../define.ts';

const year = z.number().min(1000).max(2100);

const input = z.strictObject({
  /** Each kind of thing in the lot, the year in the middle of its making, and how many there are. */
  kinds: z
    .array(
      z.strictObject({
        name: z.string().min(1).max(100),
        middleYear: year,
        count: z.int().min(0).max(1_000_000),
      }),
    )
    .min(1)
    .max(1000),
});

/** `dating.mean`: see its own fields. */
export const datingMean = defineCalculation({
  id: 'dating.mean',
  answers:
    'What is the mean date of a lot of things of known kinds, such as the contents of a house or a box of hardware?',
  method:
    'The middle years of the kinds, weighed by how many of each there are: meanYear = Σ count · middleYear / Σ count; sdYears is their spread by the same weights. ' +
    'It dates the lot as a whole and no single thing in it; things kept long and things of uncertain kind pull it back. It says nothing of how sure it is.',
  source:
    'South’s mean ceramic date formula (Method and Theory in Historical Archaeology, 1977), from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({ meanYear: z.number(), sdYears: z.number(), count: z.int(), yearSum: z.number() }),
  example: {
    kinds: [
      { name: 'cast brass handles', middleYear: 1771, count: 31 },
      { name: 'stamped plates', middleYear: 1790, count: 22 },
    ],
  },
  run: ({ kinds }) => {
    const count = kinds.reduce((sum, each) => sum + each.count, 0);
    if (count === 0) return { ok: false, faults: [nothingCounted] };
    const yearSum = kinds.reduce((sum, each) => sum + each.count * each.middleYear, 0);
    const meanYear = yearSum / count;
    const squares = kinds.reduce((sum, each) => sum + each.count * (each.middleYear - meanYear) ** 2, 0);
    return { ok: true, output: { meanYear, sdYears: Math.sqrt(squares / count), count, yearSum } };
  },
});

const nothingCounted: Fault = {
  code: 'dating.nothing-counted',
  path: 'kinds',
  message: 'Every count is 0: say how many there are of at least one kind.',
};
