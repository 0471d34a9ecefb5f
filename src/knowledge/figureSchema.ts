import { z } from 'zod';
import { id, sentence } from './entryWords.ts';

/**
 * A figure: of 100 such parts, how many would show it: best, lowest to highest believable.
 * It carries a published source (`source`, `at`) or says whose word it is (`by`); where neither stands here,
 * the `basis` of the entry holds for it.
 */
export const figure = z.strictObject({
  in100: z.string().regex(/^\d+(\.\d+)?, \d+(\.\d+)?–\d+(\.\d+)?$/, 'a figure is written "98, 95–99"'),
  source: id.optional(),
  at: z.string().optional(),
  by: z.enum(['common practice', 'judgement', 'from memory']).optional(),
  why: z.string().optional(),
});
export type Figure = z.infer<typeof figure>;

/** A figure, or its text alone where the entry's basis covers it. */
export const figureOrText = z.union([figure, figure.shape.in100.transform((in100): Figure => ({ in100 }))]);

/** On whose word the figures of an entry stand, where they do not say themselves. */
export const basis = z.strictObject({
  source: id.optional(),
  at: z.string().optional(),
  by: z.enum(['common practice', 'judgement', 'from memory']).optional(),
  why: sentence,
});
