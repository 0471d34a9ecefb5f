import { z } from 'zod';
import { readingId } from './readings.ts';

/** A sum in cents: money is kept in whole ones. */
const cents = z.number().int().nonnegative().max(1e14);
const words = z.string().default('');

/** Why a comparable is moved, in percent or by a sum; positive raises it, because it is the lesser piece. */
export const priceAdjustment = z.strictObject({
  why: z.string(),
  percent: z.number().min(-100).max(1000).optional(),
  cents: z.number().int().min(-1e14).max(1e14).optional(),
  of: z.enum(['sale', 'piece']).default('piece'),
});
export type PriceAdjustment = z.infer<typeof priceAdjustment>;

/** A sale of a like piece, with its price as it was paid. */
export const priceComparable = z.strictObject({
  id: z.string().min(1),
  name: words,
  priceCents: cents.optional(),
  /** `2024`, `2024-05` or `2024-05-31`. */
  date: words,
  /** House, sale and lot, or the dealer. */
  where: words,
  premiumIncluded: z.boolean().default(true),
  premiumPercent: z.number().min(0).max(100).optional(),
  adjustments: z.array(priceAdjustment).default([]),
  weight: z.number().min(0).max(1000).default(1),
});
export type PriceComparable = z.infer<typeof priceComparable>;

/** What the piece would be worth under one reading: the examiner’s own range. */
export const readingValue = z.strictObject({
  lowCents: cents.optional(),
  highCents: cents.optional(),
  words,
});
export type ReadingValue = z.infer<typeof readingValue>;

/** The three approaches of appraisers. */
export const approachIds = ['sales', 'cost', 'income'] as const;
export type ApproachId = (typeof approachIds)[number];

const approach = z.strictObject({ used: z.boolean().optional(), why: words });

/** What is said of the worth, beside the comparables: all of it the examiner’s. */
export const worth = z.strictObject({
  /** The value that is meant, as it is defined, and where that definition stands. */
  definition: words,
  definitionFrom: words,
  /** In which market, and why that one. */
  market: words,
  basis: z.enum(['hammer', 'with-premium']).default('with-premium'),
  approaches: z.partialRecord(z.enum(approachIds), approach).default({}),
  byReading: z.partialRecord(readingId, readingValue).default({}),
  /** Extraordinary assumptions and hypothetical conditions. */
  assumptions: words,
  lowCents: cents.optional(),
  highCents: cents.optional(),
  conclusion: words,
});
export type Worth = z.infer<typeof worth>;
