import type { DrawingLabel } from '../knowledge/signDrawingSchema.ts';
import { short } from './pieces/unevenness.ts';

/** How high the letters of a label stand, in the sheet's units: some 11 pixels where the sheet is 340 wide. */
export const labelSize = 3.3;

/** A label ready to draw: its words centered on a baseline, and the line from them to what they name. */
export type PlacedLabel = {
  words: string;
  x: number;
  baseline: number;
  /** Left, top, right and bottom of what the words cover, by the usual breadth of a letter. */
  covers: readonly [number, number, number, number];
  leader?: string;
};

/** Where a label's words stand and where its line begins: at the nearest point of their edge. */
export function placeLabel({ words, at: [x, y], to }: DrawingLabel): PlacedLabel {
  const half = (words.length * labelSize * letterBreadth) / 2;
  const covers = [x - half, y - labelSize * 0.75, x + half, y + labelSize * 0.35] as const;
  const placed = { words, x, baseline: short(y + labelSize * 0.15), covers };
  if (to === undefined) return placed;
  const from = [
    Math.min(Math.max(to[0], covers[0] - 0.5), covers[2] + 0.5),
    Math.min(Math.max(to[1], covers[1] - 0.3), covers[3] + 0.3),
  ] as const;
  return { ...placed, leader: `M ${short(from[0])} ${short(from[1])} L ${short(to[0])} ${short(to[1])}` };
}

/** The usual breadth of a letter as a share of its size, on the wide side, in the program's typeface. */
const letterBreadth = 0.5;
