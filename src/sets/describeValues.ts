import { meanAndSd, median } from './robustOutliers.ts';

/** What a row of values is like. sd and what hangs on it are undefined for a single value. */
export type Description = {
  mean: number;
  sd: number;
  /** Correlation of each value with the next; undefined where all are alike. */
  lag1: number | undefined;
  median: number;
  /** Median distance from the median, and the same brought to the scale of a standard deviation (1.4826). */
  mad: number;
  madScaled: number;
  quartiles: [number, number];
  /** Mean without the lowest and the highest tenth, rounded down to whole values. */
  trimmedMean: number;
};

/**
 * Describes values in the usual ways, and in ways that a wild one does not spoil.
 *
 * @param values  number[n], n ≥ 2, in the order they were found
 * @accuracy mean, sd and lag1 within 1e-12, 1e-12 and 1e-11 of NIST’s certified values, relative
 * @source common practice; quartiles by linear interpolation at (n − 1) q
 */
export function describeValues(values: readonly number[]): Description {
  if (values.length < 2) throw new RangeError(`describeValues needs 2 values, got ${values.length}`);
  const rising = [...values].sort((a, b) => a - b);
  const middle = median(values);
  const mad = median(values.map((value) => Math.abs(value - middle)));
  const cut = Math.floor(values.length / 10);
  const kept = rising.slice(cut, rising.length - cut);
  return {
    ...meanAndSd(values),
    lag1: lag1(values),
    median: middle,
    mad,
    madScaled: 1.4826 * mad,
    quartiles: [quantileOf(rising, 0.25), quantileOf(rising, 0.75)],
    trimmedMean: kept.reduce((sum, value) => sum + value, 0) / kept.length,
  };
}

function lag1(values: readonly number[]): number | undefined {
  // From the first value on: sums of large values that differ little would lose their digits.
  const start = values[0] as number;
  const moved = values.map((value) => value - start);
  const mean = moved.reduce((sum, value) => sum + value, 0) / moved.length;
  const off = moved.map((value) => value - mean);
  const squares = off.reduce((sum, each) => sum + each * each, 0);
  if (!(squares > 0)) return undefined;
  return off.slice(1).reduce((sum, each, index) => sum + each * (off[index] as number), 0) / squares;
}

function quantileOf(rising: readonly number[], share: number): number {
  const at = (rising.length - 1) * share;
  const low = rising[Math.floor(at)] as number;
  return low + (at - Math.floor(at)) * ((rising[Math.ceil(at)] as number) - low);
}

/**
 * Mean and standard deviation that a wild value hardly moves: algorithm A.
 *
 * Method: from the median and 1.483 MAD, values beyond 1.5 standard deviations are drawn in to there; the mean of all and
 * 1.134 times their standard deviation are the next, until nothing moves.
 *
 * @returns the MAD’s 0 where half of the values are alike
 * @source ISO 13528, algorithm A, from memory
 */
export function algorithmA(values: readonly number[]): { mean: number; sd: number } {
  let mean = median(values);
  let sd = 1.483 * median(values.map((value) => Math.abs(value - mean)));
  for (let step = 0; step < 1000 && sd > 0; step++) {
    const [low, high] = [mean - 1.5 * sd, mean + 1.5 * sd];
    const drawn = meanAndSd(values.map((value) => Math.min(high, Math.max(low, value))));
    const next = { mean: drawn.mean, sd: 1.134 * drawn.sd };
    const moved = Math.abs(next.mean - mean) + Math.abs(next.sd - sd);
    ({ mean, sd } = next);
    if (moved < 1e-14 * (Math.abs(mean) + sd)) break;
  }
  return { mean, sd };
}
