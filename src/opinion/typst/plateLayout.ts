import type { Plate } from '../opinionDocument.ts';

/** How large a plate is printed, and whether its words stand beside it or below. */
export type PlateLayout = { widthMm: number; heightMm: number; beside: boolean };

/** The width of the text, and the room for one of two plates on a letter page (the shorter of the two papers). */
export const textWidthMm = 162;
const besideMost = { widthMm: 92, heightMm: 104 };
const aboveMost = { widthMm: textWidthMm, heightMm: 84 };

/**
 * Two plates go on a page. Where the words fit beside the picture they stand there; a long picture has them below.
 */
export function plateLayout({ widthPx, heightPx }: Pick<Plate, 'widthPx' | 'heightPx'>): PlateLayout {
  const ratio = widthPx / heightPx;
  const beside = ratio < 1.2;
  const most = beside ? besideMost : aboveMost;
  const widthMm = Math.min(most.widthMm, most.heightMm * ratio);
  return { widthMm, heightMm: widthMm / ratio, beside };
}
