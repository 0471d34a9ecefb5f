import { z } from 'zod';
import { id, sentence } from './entryWords.ts';

const byYear = <Value extends z.ZodType>(value: Value) =>
  z.record(z.string().regex(/^[12]\d{3}$/, 'a year has four digits'), value);

/** A yearly index of consumer prices: context for a reader of an old price, never evidence of a present one. */
export const consumerPrices = z.strictObject({
  name: z.string().min(3),
  source: id,
  /** The day the data are of. */
  dataOf: z.string().min(4),
  why: sentence,
  /** Before this year one step of the index is a percent or more: fewer digits are told. */
  roundedBefore: z.int(),
  /** How many months of a year the series has, where not all twelve. */
  partYears: byYear(z.int().min(1).max(11)),
  means: byYear(z.number().positive()),
});
export type ConsumerPrices = z.infer<typeof consumerPrices>;
