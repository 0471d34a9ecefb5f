import type { Weighing } from '../../weighing/weighing.ts';

type Years = Pick<Weighing['years'], 'p50' | 'p90' | 'density'>;

/**
 * The stretch of years worth drawing, out to whole quarter centuries: the nine tenths of every curve, and wherever one
 * holds a thousandth or more and stands high enough to be seen, a hundredth of its own height.
 */
export function yearsWorthDrawing(curves: readonly Pick<Years, 'density' | 'p90'>[]): [number, number] {
  const told = curves.flatMap(({ density, p90 }) => {
    const seen = Math.max(0.001, 0.01 * Math.max(0, ...density.map(([, share]) => share)));
    const years = density.filter(([, share]) => share >= seen).map(([year]) => year);
    return years.length === 0 ? [] : [...years, p90[0], p90[1] - 5];
  });
  if (told.length === 0) return [1600, 2000];
  return [Math.floor(Math.min(...told) / 25) * 25, Math.ceil((Math.max(...told) + 5) / 25) * 25];
}

/** Years that are written on the axis: as many as there is room for, at whole steps. */
export function yearTicks([from, to]: [number, number], most: number): number[] {
  const step =
    [25, 50, 100, 200].find((each) => Math.floor(to / each) - Math.ceil(from / each) + 1 <= most) ?? 200;
  const first = Math.ceil(from / step) * step;
  return Array.from({ length: Math.floor((to - first) / step) + 1 }, (_, index) => first + index * step);
}

/**
 * The outline of a curve of years as steps of five, closed at the foot, as an SVG path.
 *
 * @param across  x of a year
 * @param foot    y of nothing, and of the highest share the curve is held to
 */
export function curvePath(
  density: Years['density'],
  across: (year: number) => number,
  foot: { y: number; height: number; most: number },
): string {
  const shown = density.filter(([, share]) => share > 0);
  if (shown.length === 0) return '';
  const up = (share: number) => round(foot.y - (foot.height * share) / foot.most);
  const steps = shown.map(([year, share], index) => {
    const before = shown[index - 1];
    const gap = before !== undefined && year - before[0] > 5;
    const start = round(across(year));
    const lead =
      before === undefined
        ? `M${start} ${foot.y}`
        : gap
          ? `H${round(across(before[0] + 5))}V${foot.y}H${start}`
          : `H${start}`;
    return `${lead}V${up(share)}`;
  });
  const last = shown.at(-1) as [number, number];
  return `${steps.join('')}H${round(across(last[0] + 5))}V${foot.y}Z`;
}

/** How a part's years stand to the piece's, in words; undefined where they go together. */
export function standsApart(piece: Pick<Years, 'p90'>, part: Pick<Years, 'p90'>): string | undefined {
  if (part.p90[0] > piece.p90[1]) return 'later than the piece';
  if (part.p90[1] < piece.p90[0]) return 'older than the piece';
  return undefined;
}

/** `1740–1765`, or one year. */
export function spanWords([from, to]: readonly [number, number]): string {
  return from === to ? String(from) : `${from}–${to}`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
