import { formatBoth } from '../units/length.ts';
import type { DrawnDimension } from './dimensions.ts';
import type { Box } from './extentOf.ts';
import { svgText } from './svgText.ts';

/**
 * Size lines beside a view: upright ones at its left, level ones beneath it, each with inches and millimetres.
 *
 * @returns the marks, and the view's box grown to hold them
 */
export function dimensionMarks(
  dimensions: readonly DrawnDimension[],
  [left, top, width, height]: Box,
  { size, ink }: { size: number; ink: string },
): { marks: string; box: Box } {
  const row = size / 17;
  const upright = dimensions.filter(({ direction }) => direction === 'upright');
  const level = dimensions.filter(({ direction }) => direction === 'level');
  const marks = [
    ...upright.map((each, i) => uprightMark(each, left - row * (i + 0.6), row, ink)),
    ...level.map((each, i) => levelMark(each, top + height + row * (i + 0.4), row, ink)),
  ];
  const [across, down] = [row * (upright.length + 0.3), row * (level.length + 0.4)];
  return {
    marks: marks.join(''),
    box: [
      left - (upright.length > 0 ? across : 0),
      top,
      width + (upright.length > 0 ? across : 0),
      height + (level.length > 0 ? down : 0),
    ],
  };
}

/** A size that was not taken of this piece says so. */
function wordsOf({ mm, usual }: DrawnDimension): string {
  return usual ? `${formatBoth(mm)}, usual` : formatBoth(mm);
}

function uprightMark(each: DrawnDimension, x: number, row: number, ink: string): string {
  const [from, to] = [each.from[1], each.to[1]];
  const words = svgText(wordsOf(each), [x - row * 0.18, (from + to) / 2], textLook(row, ink, true));
  return `${line(`M ${short(x)} ${short(from)} V ${short(to)}`, row, ink)}${ends([x, from], [x, to], row, ink)}${words}`;
}

function levelMark(each: DrawnDimension, y: number, row: number, ink: string): string {
  const [from, to] = [each.from[0], each.to[0]];
  const words = svgText(wordsOf(each), [(from + to) / 2, y + row * 0.6], textLook(row, ink, false));
  return `${line(`M ${short(from)} ${short(y)} H ${short(to)}`, row, ink)}${ends([from, y], [to, y], row, ink)}${words}`;
}

function textLook(row: number, ink: string, turned: boolean) {
  return { size: row * 0.42, ink, anchor: 'middle', turned } as const;
}

function ends(a: readonly [number, number], b: readonly [number, number], row: number, ink: string): string {
  const tick = row * 0.14;
  return [a, b]
    .map(([x, y]) =>
      line(`M ${short(x - tick)} ${short(y + tick)} L ${short(x + tick)} ${short(y - tick)}`, row, ink),
    )
    .join('');
}

function line(d: string, row: number, ink: string): string {
  return `<path d="${d}" fill="none" stroke="${ink}" stroke-width="${short(row / 40)}"/>`;
}

function short(mm: number): number {
  return Math.round(mm * 100) / 100;
}
