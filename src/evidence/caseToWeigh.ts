import { z } from 'zod';
import { need } from '../knowledge/schema.ts';
import { findingState, sureness } from '../piece/finding.ts';
import { observation } from '../piece/observation.ts';
import { partMake } from '../piece/partMake.ts';
import { claim } from '../piece/piece.ts';

/** A case to weigh: a form, what is claimed, and the findings. The fields of calculations.md, and our optional ones. */
export const caseToWeigh = z.strictObject({
  form: z.string(),
  features: z.record(z.string(), z.string()).optional(),
  claim: claim.optional(),
  mode: z.enum(['in-hand', 'photo-only']).default('in-hand'),
  startingOdds: z.string().optional(),
  parts: z
    .array(
      z.strictObject({
        id: z.string(),
        woods: z.array(z.string()).optional(),
        missing: z.boolean().optional(),
        /** How it is made, as far as that was said: turned or not, and so on. */
        makes: z.partialRecord(partMake, z.boolean()).optional(),
      }),
    )
    .optional(),
  findings: z.array(
    z.strictObject({
      sign: z.string(),
      part: z.string().optional(),
      state: findingState,
      sure: sureness.optional(),
      inPhotoOnly: z.boolean().optional(),
      /**
       * In place of sureness, what a measurement makes probable: in proportion, under `present` and `absent`, or under the
       * states of the unknown that the sign hangs on.
       */
      likelihoods: z.record(z.string(), z.number().min(0)).optional(),
    }),
  ),
  /** What was seen that no sign covers, with how far it would be expected of each kind of piece. */
  observations: z
    .array(z.strictObject({ id: z.string(), words: z.string(), expected: observation.shape.expected }))
    .optional(),
  /** The examiner looked the whole piece over for mends, later parts and changes, and found none. */
  lookedOver: z.boolean().optional(),
  measures: z.array(z.strictObject({ id: z.string(), mm: z.number().positive() })).optional(),
  /** Only these shop files are weighed; all that fit when left out, none when empty. */
  shops: z.array(z.string()).optional(),
  /** Seed of the redraws; required when draws > 0 is wanted, 1 when left out. */
  seed: z.number().int().optional(),
  /** How many redraws of the figures; 0 gives no intervals. 500 when left out. */
  draws: z.number().int().min(0).max(5000).optional(),
  /** Leave out the slower parts: next looks and what would change the reading. */
  quick: z.boolean().optional(),
  /** What there is time and leave for: next looks that do not fit are left out. */
  limits: z
    .strictObject({ minutesLeft: z.number().min(0).optional(), mayNot: z.array(need).optional() })
    .optional(),
});
export type CaseToWeigh = z.infer<typeof caseToWeigh>;
export type ObservationToWeigh = NonNullable<CaseToWeigh['observations']>[number];
