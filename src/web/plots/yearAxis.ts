import { type ScaleLinear, scaleLinear } from 'd3-scale';

/** Years in one bin of a weighing. */
export const weighingBinYears = 5;

/** Shares of probability by the year in which their bin begins. */
export type Density = readonly (readonly [year: number, share: number])[];

/**
 * The stretch of years worth drawing, out to whole quarter centuries: the nine tenths of every curve, and wherever one
 * holds a thousandth or more in five years and stands high enough to be seen, a hundredth of its own height.
 *
 * @param binYears  years in one bin of the curves
 */
export function yearsWorthDrawing(
  curves: readonly { density: Density; p90: readonly [number, number] }[],
  binYears: number,
): [number, number] {
  const told = curves.flatMap(({ density, p90 }) => {
    const seen = Math.max((0.001 * binYears) / 5, 0.01 * Math.max(0, ...density.map(([, share]) => share)));
    const years = density.filter(([, share]) => share >= seen).map(([year]) => year);
    return years.length === 0 ? [] : [...years, p90[0], p90[1] - binYears];
  });
  if (told.length === 0) return [1600, 2000];
  return [Math.floor(Math.min(...told) / 25) * 25, Math.ceil((Math.max(...told) + binYears) / 25) * 25];
}

/** Years that are written on the axis: as many as there is room for, at the steps the trade counts in. */
export function yearTicks([from, to]: [number, number], most: number): number[] {
  const step =
    [25, 50, 100, 200].find((each) => Math.floor(to / each) - Math.ceil(from / each) + 1 <= most) ?? 200;
  const first = Math.ceil(from / step) * step;
  return Array.from({ length: Math.floor((to - first) / step) + 1 }, (_, index) => first + index * step);
}

/** Where a year stands across a drawing of a width; years beyond its ends stand at them. */
export function yearScale(span: readonly [number, number], width: number): ScaleLinear<number, number> {
  return scaleLinear(span, [0, width]).clamp(true);
}
