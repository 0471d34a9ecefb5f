import { z } from 'zod';
import { benchResult } from './benchResult.ts';
import { condition, damage } from './condition.ts';
import { day, engagement } from './engagement.ts';
import { finding } from './finding.ts';
import { issuedRevision } from './issued.ts';
import { measure } from './measure.ts';
import { observation } from './observation.ts';
import { owner } from './owner.ts';
import { partMake } from './partMake.ts';
import { photo } from './photo.ts';
import { readingId } from './readings.ts';
import { settlement } from './settlement.ts';
import { priceComparable, worth } from './worth.ts';

/** What the piece is said, or looks meant, to be. */
export const claim = z.strictObject({
  period: z.tuple([z.number().int(), z.number().int()]).optional(),
  place: z.string().optional(),
  maker: z.string().optional(),
});
export type Claim = z.infer<typeof claim>;

/** One part of this piece, where it departs from the form's list or its wood was read. */
export const piecePart = z.strictObject({
  id: z.string().min(1),
  missing: z.boolean().default(false),
  woods: z.array(z.string()).default([]),
  /** How it is made, as far as the examiner said: turned or not, and so on. */
  makes: z.partialRecord(partMake, z.boolean()).default({}),
  words: z.string().default(''),
});
export type PiecePart = z.infer<typeof piecePart>;

/** The examiner's own conclusion; the program's reading stands beside it, never in its place. */
export const opinion = z.strictObject({
  reading: readingId.optional(),
  conclusion: z.string().default(''),
  reasons: z.string().default(''),
  /** Why the examiner departs from what the findings say, where they do. */
  departure: z.string().default(''),
  years: z.tuple([z.number().int(), z.number().int()]).optional(),
  place: z.string().default(''),
  /** How each contradiction was resolved, by finding key. */
  resolutions: z.record(z.string(), z.string()).default({}),
  limits: z.string().default(''),
  /** What is new in the revision being written, and why it is made. */
  isNew: z.string().default(''),
  why: z.string().default(''),
  status: z.enum(['draft', 'signed']).default('draft'),
  signedBy: z.string().default(''),
  signedOn: day.optional(),
});
export type Opinion = z.infer<typeof opinion>;

/**
 * The state of one piece: what all its events together come to. Collections are keyed by id so that an event
 * names the one thing it changes. Unknown fields of a newer version stay (loose), shown but not understood.
 */
export const piece = z.looseObject({
  id: z.string().min(1),
  title: z.string().default(''),
  form: z.string().min(1),
  /** The form's choices, e.g. { seat: 'slip', back: 'splat', stretchers: 'none' }. */
  features: z.record(z.string(), z.string()).default({}),
  openedOn: z.string().optional(),
  example: z.boolean().default(false),
  putAway: z.boolean().default(false),
  mode: z.enum(['in-hand', 'photo-only']).default('in-hand'),
  startingOdds: z.string().optional(),
  claim: claim.default({}),
  engagement: engagement.default(() => engagement.parse({})),
  parts: z.record(z.string(), piecePart).default({}),
  findings: z.record(z.string(), finding).default({}),
  /** What was seen that no sign covers: the examiner's own. */
  observations: z.record(z.string(), observation).default({}),
  /** The whole was looked over for mends, later parts and changes, and none was found. */
  lookedOver: z.boolean().default(false),
  measures: z.record(z.string(), measure).default({}),
  photos: z.record(z.string(), photo).default({}),
  bench: z.record(z.string(), benchResult).default({}),
  /** Photo ids in the order of the plates. */
  plateOrder: z.array(z.string()).default([]),
  /** Who had it, by id; their order follows from their years. */
  owners: z.record(z.string(), owner).default({}),
  /** Sales of like pieces, by id. */
  comparables: z.record(z.string(), priceComparable).default({}),
  /** Damage by id, in the order entered; and the condition as a whole. */
  damages: z.record(z.string(), damage).default({}),
  condition: condition.default(() => condition.parse({})),
  worth: worth.default(() => worth.parse({})),
  opinion: opinion.default(() => opinion.parse({})),
  /** Signed revisions by their number. */
  issued: z.record(z.string(), issuedRevision).default({}),
  /** What it turned out to be, where that is known on other grounds than the examiner's reading. */
  settled: settlement.optional(),
});
export type Piece = z.infer<typeof piece>;
