import { z } from 'zod';
import { id, sentence } from './entryWords.ts';
import { plainFigure } from './plainFigure.ts';

/** How many of the records counted show it: `where` says of which records, `source` where they can be opened. */
export const counts = z.strictObject({
  seen: z.number().int().min(0),
  of: z.number().int().min(1),
  where: z.string().min(3),
  source: id,
});
export type Counts = z.infer<typeof counts>;

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
  /** Records that were counted; what is weighed then follows from the judged figure and the count. */
  counts: counts.optional(),
});
/**
 * In compiled knowledge, what lies beneath a figure. `judged`: where records were counted, the figure as it was judged without
 * them. `apart`: where several were asked apart, what each said, the figure of the file first. `aside`: what others said who were
 * asked for this figure alone, not taken in. `settled`: what settled cases of the user's own counted, and the figure before.
 */
export type Figure = z.infer<typeof figure> & {
  judged?: string | undefined;
  apart?: readonly string[] | undefined;
  aside?: readonly string[] | undefined;
  settled?: { seen: number; of: number; cases: number; before: string } | undefined;
};

/** A figure, or its text alone where the entry's basis covers it. */
export const figureOrText = z.union([
  figure.transform((one): Figure => one),
  figure.shape.in100.transform((in100): Figure => ({ in100 })),
]);

/** On whose word the figures of an entry stand, where they do not say themselves. */
export const basis = z.strictObject({
  source: id.optional(),
  at: z.string().optional(),
  by: z.enum(['common practice', 'judgement', 'from memory']).optional(),
  why: sentence,
});

/**
 * How records that were counted move a judged figure: what one record of a collection weighs against one of a random sample,
 * and how many records a judgment counts for at most.
 */
export const counting = plainFigure({
  recordWeighs: z.number().gt(0).max(1),
  judgedAtMost: z.number().positive(),
}).default({
  recordWeighs: 0.3,
  judgedAtMost: 20,
  by: 'judgement',
  why: 'A collection is no random sample.',
});
export type Counting = Pick<z.infer<typeof counting>, 'recordWeighs' | 'judgedAtMost'>;
