import { z } from 'zod';
import { id, sentence } from './entryWords.ts';

/** Why some signs have no drawing, said of all of them at once: what tells them instead. */
export const notDrawn = z.strictObject({
  id,
  because: sentence,
  signs: z.array(id).min(1),
});
export type NotDrawn = z.infer<typeof notDrawn>;
