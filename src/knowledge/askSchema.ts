import { z } from 'zod';
import { id, sentence } from './entryWords.ts';

/**
 * A photograph or an answer to ask the owner of a piece for, when the piece can't be visited: which signs it may show is
 * told by the parts it takes in and by what has to be moved for it.
 */
export const ask = z.strictObject({
  id,
  kind: z.enum(['photograph', 'answer']),
  /** Its place in the list; what can go wrong least and tell most comes first. */
  order: z.number().int().positive(),
  name: z.string().min(3),
  /** What is asked, in words that can be sent as they stand. */
  ask: sentence,
  /** Families of form it is asked for; all where left out. */
  families: z.array(z.enum(['seating', 'case', 'table', 'bed', 'clock', 'glass'])).optional(),
  /** Kinds of part that come into it, groups of kinds, or whole. */
  on: z.array(z.string()).min(1),
  /** What may have to be moved for it: signs that need no more than this can be looked for in it. */
  needs: z
    .array(z.enum(['nothing', 'turned-over', 'seat-lifted', 'part-removed', 'owners-leave']))
    .default(['nothing']),
  /** Said before the step that needs it. */
  caution: sentence.optional(),
});
export type Ask = z.infer<typeof ask>;
