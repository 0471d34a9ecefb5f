import type { CauseShares } from '../evidence/causeShares.ts';
import type { Draw } from '../evidence/figures.ts';
import type { PreparedCase } from '../evidence/preparedCase.ts';
import type { Bins, Scenario } from './layout.ts';

/** What one redraw of the figures fixes, beside the parts. */
export type PartContext = {
  prepared: PreparedCase;
  draw: Draw;
  shares: CauseShares;
  scenarios: readonly Scenario[];
  /** Signs of the maker's habit that were looked for on several parts: their way is drawn once for the piece. */
  habits: readonly string[];
  old: Float64Array;
  /** By world: the bins in which it can have been made; all when left out. */
  worldBins?: readonly Bins[];
};
