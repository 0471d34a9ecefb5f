import { z } from 'zod';

/**
 * Whether a sign was seen, looked for and not seen, could not be told, or can't be on such a part at all: a leg that was never
 * turned says nothing by not being out of round.
 */
export const findingState = z.enum(['present', 'absent', 'could-not-tell', 'does-not-apply']);
export type FindingState = z.infer<typeof findingState>;

/** True of an answer that says something of the piece. */
export function tellsOfPiece(state: FindingState): state is 'present' | 'absent' {
  return state === 'present' || state === 'absent';
}

/** How sure the examiner is of what was seen; the likelihoods stand in knowledge/making.yaml. */
export const sureness = z.enum(['plain', 'fairly', 'hint']);
export type Sureness = z.infer<typeof sureness>;

/**
 * What a measurement at the bench says of a sign: how probable what was measured is, in proportion, under each state. The
 * states are `present` and `absent` of the sign itself, or those of the one unknown the sign hangs on (`natural`, `none`,
 * `imitated` …), where the measurement speaks of it directly. Weighed instead of how sure the examiner is.
 */
const measuredBy = z.strictObject({
  /** The calculation: its id, what went in, what came out. */
  calculation: z.string().min(1),
  input: z.json(),
  output: z.json(),
  likelihoods: z
    .record(z.string(), z.number().min(0))
    .refine((each) => Object.values(each).some((one) => one > 0), 'one likelihood at least is above nothing'),
  /** The result in a sentence. */
  says: z.string(),
});
export type MeasuredBy = z.infer<typeof measuredBy>;

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
  /** Where the finding was computed and not judged by eye. */
  measured: measuredBy.optional(),
});
export type Finding = z.infer<typeof finding>;

/** The one key of a sign on a part: `sign` or `sign@part`. */
export function findingKey(sign: string, part?: string): string {
  return part === undefined ? sign : `${sign}@${part}`;
}
