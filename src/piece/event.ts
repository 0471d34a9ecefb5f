import { z } from 'zod';

/** JSON as it is stored. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/**
 * Set the place named by `path` to `to`; leave `to` out to remove it. `from` is what stood there before.
 *
 * A device says in `saw` what it showed there (without a value: nothing). The record keeps `saw` only where another value
 * stood: that value was written over unseen, and an examiner has to settle which holds.
 */
const change = z.strictObject({
  path: z.array(z.string()).max(6),
  to: z.json().optional(),
  from: z.json().optional(),
  saw: z.strictObject({ value: z.json().optional() }).optional(),
});
export type Change = z.infer<typeof change>;

/** What kind of act an event is; the history page words each. */
const eventKind = z.enum([
  'piece-opened',
  'piece-described',
  'piece-put-away',
  'engagement-changed',
  'part-described',
  'finding-recorded',
  'finding-withdrawn',
  'observation-recorded',
  'observation-withdrawn',
  'looked-over',
  'case-settled',
  'settlement-withdrawn',
  'measure-recorded',
  'measure-withdrawn',
  'photo-added',
  'photo-described',
  'photo-withdrawn',
  'mark-drawn',
  'mark-withdrawn',
  'bench-recorded',
  'bench-withdrawn',
  'owner-recorded',
  'owner-withdrawn',
  'comparable-recorded',
  'comparable-withdrawn',
  'worth-changed',
  'damage-recorded',
  'damage-withdrawn',
  'condition-described',
  'opinion-changed',
  /** Of records from before revisions were kept: only read. */
  'opinion-signed',
  /** Says which value holds where the act named by `of` wrote over another one unseen. */
  'overwrite-settled',
  'opinion-issued',
  'revision-begun',
  'undo',
  'redo',
]);
export type EventKind = z.infer<typeof eventKind>;

/** An act as a device hands it in. `id` is made by the device, so that handing in twice is harmless. */
export const draftEvent = z.strictObject({
  id: z.uuid(),
  piece: z.string().min(1).max(80),
  kind: eventKind,
  changes: z.array(change).min(1),
  who: z.string().max(200).default(''),
  device: z.string().max(200),
  /** When, by the device's clock, with its zone: ISO 8601. */
  at: z.iso.datetime({ offset: true }),
  /** The event that an undo takes back or a redo brings back, or whose overwriting is settled. */
  of: z.uuid().optional(),
});
export type DraftEvent = z.infer<typeof draftEvent>;

/** Where an act that came in with the file of a piece stood in the record it was made in. */
export const eventOrigin = z.strictObject({
  record: z.string().max(80),
  seq: z.number().int().min(1),
  before: z.string().regex(/^[0-9a-f]{64}$/),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
});
export type EventOrigin = z.infer<typeof eventOrigin>;

/**
 * An event as the record keeps it: numbered and chained per device. `hash` covers all else and the hash before. One that was
 * brought in from another record says in `origin` what it was there, so that its first hash can still be checked.
 */
export type RecordedEvent = DraftEvent & { seq: number; before: string; hash: string; origin?: EventOrigin };
