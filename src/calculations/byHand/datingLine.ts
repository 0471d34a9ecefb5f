import { z } from 'zod';
import type { Fault } from '../../ground/fault.ts';
import { defineCalculation } from '../define.ts';

const year = z.number().min(1000).max(2100);

const input = z.strictObject({
  /** The year where the measure is 0, and the years for each unit of it. */
  intercept: z.number().min(-100_000).max(100_000),
  slope: z.number().min(-100_000).max(100_000),
  values: z.array(z.number().min(-1e9).max(1e9)).min(1).max(1000),
  /** The years that the line was found for; outside them it says nothing. */
  holds: z.tuple([year, year]),
});

/** `dating.line`: see its own fields. */
export const datingLine = defineCalculation({
  id: 'dating.line',
  answers: 'Which year does a measure tell that became steadily larger or smaller over the years?',
  method:
    'year = intercept + slope · measure, by a line that somebody else found: give its figures and the years it was found for. holds is false for a year outside them, where the line says nothing. ' +
    'How sure it is depends on the scatter about the line, which is not reckoned here.',
  source:
    'Pattern: Binford’s line for the bores of clay pipe stems (1962), year = 1931.85 − 38.26 · bore in 64ths of an inch, about 1620 to 1780; from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    years: z.array(z.strictObject({ value: z.number(), year: z.number(), holds: z.boolean() })),
  }),
  example: { intercept: 1931.85, slope: -38.26, values: [5, 6.2], holds: [1620, 1780] },
  run: ({ intercept, slope, values, holds: [from, to] }) => {
    if (!(from < to)) return { ok: false, faults: [backwards(from, to)] };
    const years = values.map((value) => {
      const at = intercept + slope * value;
      return { value, year: at, holds: at >= from && at <= to };
    });
    return { ok: true, output: { years } };
  },
});

function backwards(from: number, to: number): Fault {
  return {
    code: 'dating.years-backwards',
    path: 'holds',
    message: `The years ${from}, ${to} do not rise: put the earlier one first.`,
  };
}
