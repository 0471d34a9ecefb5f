import { z } from 'zod';
import { id, sentence } from './entryWords.ts';

/** What is known of the people who did a place's work: the works that tell it, or that it is from memory. */
export const whoWorked = z
  .strictObject({
    words: sentence,
    sources: z.array(id).default([]),
    /** Where in them, and what of it they don't tell. */
    at: z.string().optional(),
    by: z.enum(['common practice', 'from memory']).optional(),
  })
  .refine(
    ({ sources, by }) => sources.length > 0 || by !== undefined,
    'who did the work is said with a source, or says that it is common practice or from memory',
  );
export type WhoWorked = z.infer<typeof whoWorked>;
