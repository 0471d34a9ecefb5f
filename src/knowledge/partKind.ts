import { z } from 'zod';
import { id } from './entryWords.ts';

/** A kind of part, and the groups it belongs to by what it is made of and how it is worked. */
export const partKind = z.strictObject({
  id,
  /** Names that stand for several kinds at once wherever kinds are listed. */
  in: z.array(id).default([]),
});

export type PartKind = z.infer<typeof partKind>;
