import { z } from 'zod';

/** What a person or firm had to do with the piece: its owner, or someone through whose hands it went. */
export const holderRoles = ['owner', 'dealer', 'agent', 'auction-house', 'custodian'] as const;
export type HolderRole = (typeof holderRoles)[number];

/** Whether the piece came straight from the one before. */
export const directness = ['yes', 'no', 'unknown'] as const;
export type Directness = (typeof directness)[number];

/** Means by which a piece passes, each with the words that stand before the name; both the trade’s own. */
export const meansPhrases = {
  made: 'made for',
  commissioned: 'commissioned by',
  purchased: 'purchased by',
  auction: 'sold at auction to',
  descent: 'by descent to',
  bequest: 'bequest to',
  gift: 'gift to',
  marriage: 'by marriage to',
  exchange: 'exchanged with',
  consigned: 'consigned to',
  loan: 'lent to',
  found: 'found by',
} as const;

/** What a holding is known by, the strongest first. @source common practice; no published list was found */
export const evidenceKinds = ['mark', 'names-it', 'names-like', 'later-paper', 'family', 'trade'] as const;
export type EvidenceKind = (typeof evidenceKinds)[number];

const year = z.number().int().min(1000).max(2200);
const years = z.tuple([year, year]);

/** One holding of the piece: who had it, between which years, how it came to them, and what that is known by. */
export const owner = z.strictObject({
  id: z.string().min(1),
  name: z.string().default(''),
  role: z.enum(holderRoles).default('owner'),
  /** Birth and death, or of a firm founding and closing. */
  bornIn: year.optional(),
  diedIn: year.optional(),
  /** Between which years the holding began, and between which it ended. */
  began: years.optional(),
  ended: years.optional(),
  /** A key of `meansPhrases`, or words. */
  how: z.string().default(''),
  place: z.string().default(''),
  source: z.string().default(''),
  evidence: z.enum(evidenceKinds).optional(),
  sure: z.enum(['plain', 'fairly', 'hint']).default('plain'),
  direct: z.enum(directness).default('unknown'),
  /** A label, stamp or brand of theirs is on the piece. */
  labelled: z.boolean().default(false),
  photos: z.array(z.string()).default([]),
});
export type Owner = z.infer<typeof owner>;
