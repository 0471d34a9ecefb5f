import { z } from 'zod';

/** One thing measured or compared at the bench, kept so that it can be done again: what went in and what came out. */
export const benchResult = z.strictObject({
  id: z.string().min(1),
  /** Id of the calculation. */
  calculation: z.string().min(1),
  /** What it was done on, in the examiner's words. */
  title: z.string().default(''),
  part: z.string().optional(),
  /** The photo it was taken from. */
  photo: z.string().optional(),
  input: z.json(),
  output: z.json(),
  /** The result in a sentence, with its doubt. */
  says: z.string().default(''),
  /** Where the marks stand on the photo, for drawing them again. */
  marks: z.json().optional(),
  /** Key of the finding it was entered as. */
  finding: z.string().optional(),
});
export type BenchResult = z.infer<typeof benchResult>;
