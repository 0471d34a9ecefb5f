import { z } from 'zod';

/** One size of the piece, kept in millimetres with what was typed. `id` is a measure of the form, or the user's own. */
export const measure = z.strictObject({
  id: z.string().min(1),
  mm: z.number().positive(),
  sigmaMm: z.number().nonnegative().optional(),
  asEntered: z.string(),
  words: z.string().default(''),
});
export type Measure = z.infer<typeof measure>;
