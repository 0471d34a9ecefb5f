import type { CauseShares } from './causeShares.ts';
import type { Draw } from './figures.ts';
import type { Bins } from './layout.ts';
import type { PreparedCase } from './prepareCase.ts';

/**
 * A column of the model: a world, the shop (0 = unlisted) where it is period work, and the state of the piece's shared
 * habits (bit h: the maker's way shows the sign `habits[h]`).
 */
export type Column = { world: number; shop: number; habits: number };

/** What one redraw of the figures fixes, beside the parts. */
export type PartContext = {
  prepared: PreparedCase;
  draw: Draw;
  shares: CauseShares;
  columns: readonly Column[];
  /** Signs of the maker's habit that were looked for on several parts: their way is drawn once for the piece. */
  habits: readonly string[];
  old: Float64Array;
  /** Campaigns that several parts share, as far as this part shows them: its states are the sets of those that happened. */
  campaigns?: readonly string[];
  /** By world: the bins in which it can have been made; all when left out. */
  worldBins?: readonly Bins[];
};
