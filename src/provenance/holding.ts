import type { Directness, HolderRole } from '../piece/owner.ts';
import type { YearSpan } from '../units/years.ts';

/** How sure it is that the holding was so: as with findings. */
export const holdingSureness = ['plain', 'fairly', 'hint'] as const;
export type HoldingSureness = (typeof holdingSureness)[number];

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

/** True of those who are private or public owners, and not of trade or keepers. */
export function holdsTitle({ role }: Pick<Holding, 'role'>): boolean {
  return role === 'owner' || role === 'dealer';
}
