import { z } from 'zod';
import { id } from './entryWords.ts';

/** A work cited, in the field names of CSL-JSON. */
export const work = z.strictObject({
  id,
  type: z.string(),
  title: z.string(),
  author: z
    .array(
      z.union([
        z.strictObject({ family: z.string(), given: z.string().optional() }),
        z.strictObject({ literal: z.string() }),
      ]),
    )
    .default([]),
  issued: z.union([z.number().int(), z.string()]).optional(),
  'container-title': z.string().optional(),
  publisher: z.string().optional(),
  volume: z.union([z.string(), z.number()]).optional(),
  page: z.string().optional(),
  URL: z.url().optional(),
  /** How far it was read, and how far it can be leaned on. */
  note: z.string().optional(),
  grade: z.enum(['A', 'B', 'C', 'D']).optional(),
  read: z.enum(['in part', 'whole', 'not read']),
});
export type Work = z.infer<typeof work>;
