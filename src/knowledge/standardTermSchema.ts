import { z } from 'zod';

/**
 * A term of the Art & Architecture Thesaurus for what an entry describes. `fit`: the term means the same, or the entry is
 * one kind of what it means. Every id stands with its term in test/reference/aat-terms.json; one that could not be
 * checked is left out.
 */
export const standardTerm = z.strictObject({
  id: z.number().int().min(300_000_000).max(300_999_999),
  term: z.string().min(2),
  fit: z.enum(['same', 'broader']),
});
export type StandardTerm = z.infer<typeof standardTerm>;
