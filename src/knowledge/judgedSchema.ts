import { z } from 'zod';
import { id, sentence } from './entryWords.ts';
import { figure } from './figureSchema.ts';
import { plainFigure } from './plainFigure.ts';

/** What judges who were asked apart said of one figure: `{ A: "60, 40–78", B: "45, 25–65" }`. */
const judged = z.record(z.string().regex(/^[A-Z]$/, 'a judge is one capital letter'), figure.shape.in100);

/**
 * Judgments of a sign’s figures, by the state each is given for; `campaign` for the share as a trace of one. `aside`: told and not
 * taken in, for a sign that is held to what others judged of whole traces.
 */
export const judgedSign = z.strictObject({
  id,
  aside: z.literal(true).optional(),
  shows: z.record(z.string(), judged),
  campaign: judged.optional(),
});

/** Judgments of how often an alteration was made, and of the kinds of part it then changes. */
export const judgedAlteration = z.strictObject({
  id,
  happened: z.record(z.string(), judged),
  changes: z.record(z.string(), judged).default({}),
});

/** Judgments of how often a kind of part is renewed in ordinary use, by the family of the form. */
export const judgedRenewal = z.strictObject({ id, renewed: z.record(z.string(), judged) });

/** Judgments of how many pieces come from a shop or region, and of its habits, by the sign. */
export const judgedShop = z.strictObject({
  id,
  share: judged.optional(),
  habits: z.record(z.string(), judged).default({}),
});

/** Judgments of figures in making.yaml: its heading, and the way from there, `plain/there`; empty for the heading itself. */
export const judgedMaking = z.strictObject({
  id: z.string(),
  aside: z.literal(true).optional(),
  figures: z.record(z.string(), judged),
});

/** Who was asked apart and when, what each judgment weighs beside the figure of the file, and how far all ranges are widened. */
export const pooling = plainFigure({
  asked: z.string().regex(/^\d{4}-\d\d-\d\d$/, 'a day is written 2026-11-30'),
  judges: z.record(z.string(), z.strictObject({ who: sentence, weight: z.number().min(0) })),
  house: z.number().positive(),
  widened: z.number().min(1),
});
export type Pooling = Pick<z.infer<typeof pooling>, 'judges' | 'house' | 'widened'>;
