import { z } from 'zod';
import { id, sentence } from './entryWords.ts';

/** On whose word a figure stands that is not one of 100. */
export const whoseWord = {
  source: id.optional(),
  at: z.string().optional(),
  by: z.enum(['common practice', 'judgement', 'from memory']).optional(),
  why: sentence,
};

/** A figure that is not one of 100, of the fields given, with on whose word it stands. */
export function plainFigure<Fields extends z.ZodRawShape>(fields: Fields) {
  return z
    .strictObject({ ...fields, ...whoseWord })
    .refine(
      (entry) =>
        ('source' in entry && entry.source !== undefined) || ('by' in entry && entry.by !== undefined),
      'a figure has a source, or says by whom: common practice, judgement or from memory',
    );
}
