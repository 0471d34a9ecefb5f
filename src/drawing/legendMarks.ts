import type { Box } from './extentOf.ts';
import { drawnIn, isHatched, isPale, type Standing, standingWords } from './hatching.ts';
import { svgText } from './svgText.ts';

/**
 * The standings shown in a picture, each with its hatch and word, beneath it.
 *
 * @returns the marks, and the picture's box grown to hold them
 */
export function legendMarks(
  shown: readonly Standing[],
  [left, top, width, height]: Box,
  { size, idPrefix }: { size: number; idPrefix: string },
): { marks: string; box: Box } {
  if (shown.length === 0) return { marks: '', box: [left, top, width, height] };
  const row = size / 24;
  const floor = top + height + row * 0.4;
  const marks = shown.map((standing, index) => {
    const y = floor + index * row;
    const swatch = `x="${short(left)}" y="${short(y)}" width="${short(row * 1.3)}" height="${short(row * 0.75)}"`;
    const hatch = isHatched(standing) ? `<rect ${swatch} fill="url(#${idPrefix}-${standing})"/>` : '';
    const [fill, line] = isPale(standing) ? [drawnIn.paper, drawnIn.pale] : [drawnIn.tone, drawnIn.ink];
    const words = svgText(standingWords[standing], [left + row * 1.6, y + row * 0.6], {
      size: row * 0.62,
      ink: drawnIn.ink,
    });
    return `<rect ${swatch} fill="${fill}" stroke="${line}" stroke-width="${short(size / 600)}"/>${hatch}${words}`;
  });
  // Room for the longest word, whatever the width of the view.
  const broad = Math.max(width, row * 9);
  return { marks: marks.join(''), box: [left, top, broad, height + row * (shown.length + 0.6)] };
}

function short(mm: number): number {
  return Math.round(mm * 100) / 100;
}
