import { mean, median } from '../ground/statistics.ts';
import { grubbsCritical } from './studentT.ts';

/** One value among its like: how far out it lies, by each test. */
export type Standing = {
  value: number;
  /** Modified z-score: negative below the median. */
  z: number;
  /** Whether a test by itself would call it out: 3.5 for the modified z-score, 5 in 100 (two-sided) for extreme deviates. */
  byModifiedZ: boolean;
  byExtremeDeviates: boolean;
};

/** The published threshold of the modified z-score. */
const modifiedZThreshold = 3.5;

/** Fewer values than this have no typical one to stand out from. */
export const leastForOutliers = 5;

/**
 * Which values stand out from the rest, by a test that the outliers themselves can't spoil.
 *
 * Method: modified z-score M = 0.6745 (x − median) / MAD, called out above 3.5; where more than half of the values are
 * alike and MAD is 0, M = (x − median) / (1.2533 · mean absolute deviation). Beside it the generalized extreme Studentized
 * deviate of Rosner, for up to a third of the values, at 5 in 100 two-sided; with one outlier that is Grubbs’ test.
 *
 * @param values  number[n], n ≥ 5
 * @returns the standing of each, in the order given
 * @throws RangeError with fewer than 5 values
 * @accuracy Grubbs’ statistic and critical values to 1e-6 of computed ones (test/reference/statistics.json)
 * @source Iglewicz and Hoaglin 1993 (How to Detect and Handle Outliers), as quoted; the form for MAD 0 as quoted from
 *         a statistics program’s manual; Rosner 1983 and Grubbs 1969, from memory
 */
export function robustOutliers(values: readonly number[]): Standing[] {
  if (values.length < leastForOutliers)
    throw new RangeError(`robustOutliers needs ${leastForOutliers} values, got ${values.length}`);
  const called = extremeDeviates(values, Math.floor((values.length - 1) / 3));
  const scores = modifiedZ(values);
  return values.map((value, index) => {
    const z = scores[index] as number;
    return {
      value,
      z,
      byModifiedZ: Math.abs(z) > modifiedZThreshold,
      byExtremeDeviates: called.has(index),
    };
  });
}

/** The modified z-score of each value; all 0 where all are alike. */
export function modifiedZ(values: readonly number[]): number[] {
  const middle = median(values);
  const deviations = values.map((value) => Math.abs(value - middle));
  const mad = median(deviations);
  const scale = mad > 0 ? mad / 0.6745 : 1.253314 * mean(deviations);
  return values.map((value) => (scale > 0 ? (value - middle) / scale : 0));
}

/** Grubbs’ statistic: the largest distance from the mean in standard deviations, and whose it is. */
export function grubbs(values: readonly number[]): { G: number; index: number } {
  const { mean, sd } = meanAndSd(values);
  const distances = values.map((value) => (sd > 0 ? Math.abs(value - mean) / sd : 0));
  const G = Math.max(...distances);
  return { G, index: distances.indexOf(G) };
}

/** Mean and standard deviation (n − 1), in two passes; 0 for a single value. */
export function meanAndSd(values: readonly number[]): { mean: number; sd: number } {
  const average = mean(values);
  const left = values.reduce((sum, value) => sum + (value - average), 0);
  const squares = values.reduce((sum, value) => sum + (value - average) ** 2, 0) - left ** 2 / values.length;
  return { mean: average, sd: values.length > 1 ? Math.sqrt(Math.max(0, squares) / (values.length - 1)) : 0 };
}

/** The indices that Rosner’s procedure calls out: as many as the last of its steps that passes its critical value. */
function extremeDeviates(values: readonly number[], most: number): Set<number> {
  let rest = values.map((value, index) => ({ value, index }));
  const taken: number[] = [];
  let called = 0;
  for (let step = 0; step < most && rest.length >= 3; step++) {
    const { G, index } = grubbs(rest.map(({ value }) => value));
    const critical = grubbsCritical(rest.length, 0.05, 2);
    taken.push((rest[index] as { index: number }).index);
    rest = rest.filter((_, at) => at !== index);
    if (G > critical) called = taken.length;
  }
  return new Set(taken.slice(0, called));
}
