import type { YearAxis } from '../evidence/yearAxis.ts';
import { sum } from '../ground/statistics.ts';

/** The years as a weighing reports them: intervals of calendar years, and the share of each bin by its middle year. */
export type YearSummary = { p50: [number, number]; p90: [number, number]; density: [number, number][] };

/**
 * Shares by bin as intervals and a curve. An interval runs from the first year of the first of the most probable bins
 * that together hold the wanted share to the last year of the last of them; where those bins do not touch, the interval
 * spans the gap, and the curve shows it.
 *
 * @param shares  number[bins], any scale
 */
export function yearSummary(axis: YearAxis, shares: Float64Array, lastYear: number): YearSummary {
  const total = sum(shares);
  const density = Array.from(shares, (share, bin): [number, number] => [
    axis.fromYear + (bin + 0.5) * axis.stepYears,
    total > 0 ? share / total : 0,
  ]);
  const order = mostProbableFirst(shares);
  return {
    p50: highestDensity(axis, density, order, 0.5, lastYear),
    p90: highestDensity(axis, density, order, 0.9, lastYear),
    density,
  };
}

/** The bins, most probable first; the earlier of two alike. */
function mostProbableFirst(shares: Float64Array): Int32Array {
  return Int32Array.from(shares, (_, bin) => bin).sort(
    (a, b) => (shares[b] as number) - (shares[a] as number) || a - b,
  );
}

/** The years spanned by the fewest bins that hold at least `want` of the whole, most probable first. */
function highestDensity(
  axis: YearAxis,
  density: readonly (readonly [number, number])[],
  order: Int32Array,
  want: number,
  lastYear: number,
): [number, number] {
  let held = 0;
  let first = axis.bins - 1;
  let last = 0;
  for (const bin of order) {
    held += density[bin]?.[1] ?? 0;
    first = Math.min(first, bin);
    last = Math.max(last, bin);
    // A rounding error must not draw in a further bin.
    if (held >= want - 1e-9) break;
  }
  const from = axis.fromYear + first * axis.stepYears;
  return [from, Math.min(lastYear, axis.fromYear + (last + 1) * axis.stepYears - 1)];
}
