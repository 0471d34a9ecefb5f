import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area, curveLinear, curveStepAfter } from 'd3-shape';
import type { Density } from './yearAxis.ts';

/**
 * The outline of a curve of years, closed at its foot, as an SVG path; empty where it is nothing anywhere.
 *
 * @param binYears        years of one step; where a curve slopes from year to year, `sloping`
 * @param across          x of a year
 * @param foot, highest   y of nothing, and of the highest share
 */
export function densityPath(
  density: Density,
  binYears: number | 'sloping',
  across: ScaleLinear<number, number>,
  [foot, highest]: readonly [number, number],
): string {
  const up = scaleLinear([0, Math.max(...density.map(([, share]) => share))], [foot, highest]);
  const ends = density.flatMap(([year, share], index): [number, number][] => {
    const next = density[index + 1]?.[0];
    const falls = binYears !== 'sloping' && (next === undefined || next > year + binYears);
    return falls
      ? [
          [year, share],
          [year + binYears, 0],
        ]
      : [[year, share]];
  });
  const path = area<readonly [number, number]>()
    .digits(2)
    .curve(binYears === 'sloping' ? curveLinear : curveStepAfter)
    .x(([year]) => across(year))
    .y0(foot)
    .y1(([, share]) => up(share));
  return density.some(([, share]) => share > 0) ? (path(ends) ?? '') : '';
}
