import { outOf, probabilityBand } from './probabilityWords.ts';

/** Below this share of the pieces of a reading a finding does not fit it. */
export const contradictionBelow = 0.1;

/** How improbable a finding must be not to fit, by the one scale: `improbable (below 10 in 100)`. */
export function contradictionBelowWords(): string {
  return `${probabilityBand(0.99 * contradictionBelow).words} (below ${outOf(contradictionBelow)})`;
}
