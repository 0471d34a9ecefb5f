import { z } from 'zod';

/** A day as written on paper: `2026-11-25`. */
export const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a day is written as 2026-11-25');

/** What the opinion is wanted for. */
export const purpose = z.enum([
  'curiosity',
  'insurance',
  'estate',
  'gift',
  'donation',
  'division',
  'sale',
  'purchase',
  'damage',
  'wildlife',
  'court',
]);
export type Purpose = z.infer<typeof purpose>;

/** The job as it was taken on: who asks, for what, what they believe, who may rely on the answer. */
export const engagement = z.strictObject({
  client: z.string().default(''),
  clientAddress: z.string().default(''),
  owner: z.string().default(''),
  purpose: purpose.optional(),
  question: z.string().default(''),
  belief: z.string().default(''),
  mayRely: z.string().default(''),
  background: z.string().default(''),
  askedOn: day.optional(),
  examinedOn: day.optional(),
  examinedAt: z.string().default(''),
  effectiveOn: day.optional(),
  fee: z.string().default(''),
  interest: z.string().default(''),
  /** What the owner agreed may be done: turn over, lift the seat, draw a tack. */
  leave: z.string().default(''),
  limits: z.string().default(''),
  /** What the intended use asks for besides, by the ids of `engagement/askedByUse.ts`; “none” is an answer. */
  answers: z.record(z.string(), z.string()).default({}),
  examiner: z.string().default(''),
  examinerAddress: z.string().default(''),
  examinerQualification: z.string().default(''),
});
export type Engagement = z.infer<typeof engagement>;
