import type { Plate } from '../opinionDocument.ts';

/** How large a plate is printed, and whether its words stand beside it or below. */
export type PlateLayout = { widthMm: number; heightMm: number; beside: boolean };

/** The papers an opinion is printed on. */
export type Paper = 'a4' | 'us-letter';

/** The width of the text, the same on both papers. */
const textWidthMm = 162;

/** The most room for one of two plates on a page: letter is the shorter paper. */
const most: Record<Paper, { besideMm: [number, number]; aboveMm: [number, number] }> = {
  a4: { besideMm: [92, 98], aboveMm: [textWidthMm, 84] },
  'us-letter': { besideMm: [92, 90], aboveMm: [textWidthMm, 74] },
};

/**
 * Two plates go on a page. Where the words fit beside the picture they stand there; a long picture has them below.
 */
export function plateLayout(
  { widthPx, heightPx }: Pick<Plate, 'widthPx' | 'heightPx'>,
  paper: Paper,
): PlateLayout {
  const ratio = widthPx / heightPx;
  const beside = ratio < 1.2;
  const [wide, high] = beside ? most[paper].besideMm : most[paper].aboveMm;
  const widthMm = Math.min(wide, high * ratio);
  return { widthMm, heightMm: widthMm / ratio, beside };
}
