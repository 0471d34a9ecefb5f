import { dimensionMarks } from './dimensionMarks.ts';
import type { DrawnDimension } from './dimensions.ts';
import type { Drawing } from './drawForm.ts';
import {
  drawnIn,
  hatchPattern,
  isHatched,
  isPale,
  type Standing,
  standings,
  standingWords,
} from './hatching.ts';
import { legendMarks } from './legendMarks.ts';
import { escapeXml } from './svgText.ts';

/** How a view is to be shown. */
export type DrawingLook = {
  /** The standing of each part by its id; a part not named is drawn without hatching and word. */
  standing?: Readonly<Record<string, Standing>>;
  names: Readonly<Record<string, string>>;
  title: string;
  description: string;
  /** The part to draw in a heavier line. */
  highlight?: string;
  /** Sizes to mark beside the view, from `dimensionsOf`. */
  dimensions?: readonly DrawnDimension[];
  /** Whether the hatches are explained beneath the view; they are, unless whoever sets the picture does it. */
  legend?: boolean;
  /** Put before every id, so that two drawings on one page keep apart. */
  idPrefix?: string;
};

/**
 * A view of a piece as a complete SVG picture: outlines, hatching by standing, sizes, and the same in words.
 *
 * Method: parts behind are drawn first, each filled, then hatched by its standing; what was not looked at is left blank, in a
 * pale thin line. Title and description are for those who can't see it; every part carries its name and standing. Lines
 * keep their share of the picture's size.
 *
 * @returns SVG text; with neither legend nor sizes its viewBox is the view's box exactly
 */
export function drawingSvg(view: Drawing['views'][number], look: DrawingLook): string {
  const { names, title, description, standing = {}, idPrefix = `drawing-${view.view}` } = look;
  const { ink, pale, tone, paper } = drawnIn;
  const size = Math.max(view.box[2], view.box[3]);
  const shown = standings.filter((each) => view.shapes.some(({ part }) => standing[part] === each));
  const sizes = dimensionMarks(look.dimensions ?? [], view.box, { size, ink });
  const legend = look.legend === false ? undefined : legendMarks(shown, sizes.box, { size, idPrefix });
  const [x, y, width, height] = (legend ?? sizes).box.map(short);
  const line = short(size / 600);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${x} ${y} ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${idPrefix}-title ${idPrefix}-desc">`,
    `<title id="${idPrefix}-title">${escapeXml(title)}</title>`,
    `<desc id="${idPrefix}-desc">${escapeXml(description)}</desc>`,
    `<defs>${shown.map((each) => hatchPattern(each, `${idPrefix}-${each}`, short(size / 60), ink)).join('')}</defs>`,
    `<g stroke="${ink}" stroke-width="${line}" stroke-linejoin="round" stroke-linecap="round" fill-rule="evenodd">`,
    ...view.shapes.map(({ part, d }) => {
      const state = standing[part];
      const words = `${names[part] ?? part}${state === undefined ? '' : `: ${standingWords[state]}`}`;
      const hatch = state === undefined || !isHatched(state) ? '' : hatched(d, `${idPrefix}-${state}`);
      const heavier = part === look.highlight ? ` stroke-width="${short(line * 2.4)}"` : '';
      const paler = isPale(state) ? ` stroke="${pale}"` : '';
      const fill = state === undefined || isPale(state) ? paper : tone;
      return `<g data-part="${escapeXml(part)}"${heavier}${paler}><title>${escapeXml(words)}</title><path d="${d}" fill="${fill}"/>${hatch}</g>`;
    }),
    '</g>',
    sizes.marks,
    legend?.marks ?? '',
    '</svg>',
  ].join('');
}

function hatched(d: string, pattern: string): string {
  return `<path d="${d}" fill="url(#${pattern})"/>`;
}

function short(mm: number): number {
  return Math.round(mm * 100) / 100;
}
