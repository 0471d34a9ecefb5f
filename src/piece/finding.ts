import { z } from 'zod';

/** Whether a sign was seen, looked for and not seen, or could not be told. */
export const findingState = z.enum(['present', 'absent', 'could-not-tell']);
export type FindingState = z.infer<typeof findingState>;

/** How sure the examiner is of what was seen; the likelihoods stand in knowledge/making.yaml. */
export const sureness = z.enum(['plain', 'fairly', 'hint']);
export type Sureness = z.infer<typeof sureness>;

/**
 * What the examiner recorded of one sign on one part (or on the whole piece, when `part` is left out).
 * `id` is stable and made by `findingKey`, so that answering the same sign twice changes one finding.
 */
export const finding = z.strictObject({
  id: z.string().min(1),
  sign: z.string().min(1),
  part: z.string().min(1).optional(),
  state: findingState,
  sure: sureness.default('plain'),
  inPhotoOnly: z.boolean().default(false),
  words: z.string().default(''),
  photos: z.array(z.string()).default([]),
});
export type Finding = z.infer<typeof finding>;

/** The one key of a sign on a part: `sign` or `sign@part`. */
export function findingKey(sign: string, part?: string): string {
  return part === undefined ? sign : `${sign}@${part}`;
}
