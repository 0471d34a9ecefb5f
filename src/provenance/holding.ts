import type { YearSpan } from '../units/years.ts';

/** What a person or firm had to do with the piece: the owner, or someone through whose hands it went. */
export const holderRoles = ['owner', 'dealer', 'agent', 'auction-house', 'custodian'] as const;
export type HolderRole = (typeof holderRoles)[number];

/** How sure it is that the holding was so: as with findings. */
export const holdingSureness = ['plain', 'fairly', 'hint'] as const;
export type HoldingSureness = (typeof holdingSureness)[number];

/** Whether the piece came straight from the one before. */
export const directness = ['yes', 'no', 'unknown'] as const;
export type Directness = (typeof directness)[number];

/** One holding as it was told or found. Years take both ends in. */
export type Holding = {
  name: string;
  role: HolderRole;
  /** A person’s years from birth to death, a firm’s from founding to closing; an end that is not known is left out. */
  lived: OpenSpan;
  /** Between which years the holding began, and between which it ended; left out where nothing is known of it. */
  began?: YearSpan | undefined;
  ended?: YearSpan | undefined;
  /** Means of acquisition: an id of `meansPhrases`, or words. */
  how: string;
  place: string;
  /** What it is known by: a document, a mark, a statement and whose. */
  source: string;
  sure: HoldingSureness;
  direct: Directness;
  /** A label, stamp or brand of this firm or person is on the piece. */
  labelled: boolean;
};

/** A span either end of which may be unknown. */
export type OpenSpan = { from?: number | undefined; to?: number | undefined };

/** Means of acquisition with the words that stand before the name; both the trade’s own. */
export const meansPhrases: Readonly<Record<string, string>> = {
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
};

/** True of those who are private or public owners, and not of trade or keepers. */
export function holdsTitle({ role }: Pick<Holding, 'role'>): boolean {
  return role === 'owner' || role === 'dealer';
}
