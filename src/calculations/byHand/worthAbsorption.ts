import { z } from 'zod';
import { absorption } from '../../worth/absorption.ts';
import { defineCalculation } from '../define.ts';

const share = z.number().min(0).max(1);

/** `worth.absorption`: see its own fields. */
export const worthAbsorption = defineCalculation({
  id: 'worth.absorption',
  answers: 'What is a block of like pieces worth, where the market takes only so many of them a year?',
  method:
    'As many a year as the market takes, at unitValue grown by priceGrowth, less commission; each year’s proceeds come at its end and are brought to today by discountRate. discountPercent is against all at their single value. Every rate is the appraiser’s to reason: none is known here.',
  source:
    'Discounted absorption, common practice of appraisers; held against values reckoned outside this program.',
  needsKnowledge: false,
  input: z.strictObject({
    items: z.int().min(1).max(100_000),
    unitValue: z.number().positive().max(1e12),
    soldPerYear: z.int().min(1).max(100_000),
    discountRate: share,
    priceGrowth: z.number().min(-1).max(1).default(0),
    commission: share.default(0),
  }),
  output: z.strictObject({
    years: z.int(),
    schedule: z.array(
      z.strictObject({ year: z.int(), sold: z.int(), net: z.number(), presentValue: z.number() }),
    ),
    presentValue: z.number(),
    aggregate: z.number(),
    discountPercent: z.number(),
  }),
  example: {
    items: 36,
    unitValue: 450,
    soldPerYear: 9,
    discountRate: 0.08,
    priceGrowth: 0.01,
    commission: 0.15,
  },
  run: ({ items, unitValue, soldPerYear, discountRate, priceGrowth, commission }) => {
    const found = absorption(items, unitValue, soldPerYear, {
      discount: discountRate,
      growth: priceGrowth,
      commission,
    });
    return { ok: true, output: { years: found.schedule.length, ...found } };
  },
});
