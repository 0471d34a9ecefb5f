import { sum } from '../../ground/statistics.ts';
import type { Strip } from './grainStrips.ts';

/** The grain of a strip as it would cross the middle of the band if it went on. */
export type GrainProfile = {
  /** One value a column, evened out: mean 0, spread about 1. */
  values: Float64Array;
  /** How far the grain moves sideways for each step away from the band, at the strip's middle, and how much that changes a column. */
  slope: number;
  slopeChange: number;
  /** How well the half next to the band foretells the half away from it, as a correlation: about 0 on a plain surface. */
  agreement: number;
  /** Spread of the grain's lightness (0–100) before evening out. */
  contrast: number;
};

/** The grain may run this much off the part's direction: nearly ten degrees. */
const steepest = 0.17;

/**
 * The grain lines of a strip, followed to the middle of the band.
 *
 * Method: rows are slid sideways in proportion to their distance from the band and added up; the slide at which the sum
 * varies most across the strip is the grain's slope (a slant stack). It is sought in four overlapping pieces of the width and a straight line
 * laid through them, so that grain that draws together or apart is followed too. Slow changes across the strip
 * are lighting and are taken off; the rest is brought to even strength.
 *
 * @source slant stacks are common practice in seismology (from memory); their use here is ours
 */
export function grainProfile(strip: Strip): GrainProfile {
  const flat = flattened(strip);
  const { slope, slopeChange } = slopeOf(bunched(flat));
  const raw = stacked(flat, slope, slopeChange, 0, flat.rows);
  const half = Math.floor(flat.rows / 2);
  const near = evened(stacked(flat, slope, slopeChange, 0, half));
  const far = evened(stacked(flat, slope, slopeChange, half, flat.rows));
  return {
    values: evened(raw),
    slope,
    slopeChange,
    agreement: correlation(near, far),
    contrast: spread(highPassed(raw)),
  };
}

/** How alike two rows of values are, −1 to 1. */
export function correlation(a: ArrayLike<number>, b: ArrayLike<number>): number {
  const count = Math.min(a.length, b.length);
  let [ab, aa, bb, sumA, sumB] = [0, 0, 0, 0, 0];
  for (let at = 0; at < count; at++) {
    const [x, y] = [a[at] as number, b[at] as number];
    ab += x * y;
    aa += x * x;
    bb += y * y;
    sumA += x;
    sumB += y;
  }
  const both = (aa - (sumA * sumA) / count) * (bb - (sumB * sumB) / count);
  return both > 0 ? (ab - (sumA * sumB) / count) / Math.sqrt(both) : 0;
}

/** Each row less its slow part, specks held back; places outside the area stay NaN. */
function flattened(strip: Strip): Strip {
  const values = new Float32Array(strip.values.length).fill(Number.NaN);
  for (let row = 0; row < strip.rows; row++) {
    const line = strip.values.subarray(row * strip.columns, (row + 1) * strip.columns);
    const slow = boxed(boxed(line, slowPart(strip.columns)), slowPart(strip.columns));
    const fine = line.map((value, at) => value - (slow[at] as number));
    const limit = 3 * spread(fine);
    values.set(
      fine.map((value) => Math.max(-limit, Math.min(limit, value))),
      row * strip.columns,
    );
  }
  return { ...strip, values };
}

/** Rows put together three by three: at the steepest slope the grain moves half a column over them, and the search is three times faster. */
function bunched(strip: Strip): Strip {
  const rows = Math.floor(strip.rows / bunch);
  const values = new Float32Array(rows * strip.columns);
  for (let at = 0; at < values.length; at++) {
    const first = Math.floor(at / strip.columns) * bunch * strip.columns + (at % strip.columns);
    let sum = 0;
    for (let row = 0; row < bunch; row++) sum += strip.values[first + row * strip.columns] as number;
    values[at] = sum / bunch;
  }
  return { ...strip, rows, values };
}

const bunch = 3;

function slopeOf(strip: Strip): { slope: number; slopeChange: number } {
  const piece = Math.max(16, Math.floor(strip.columns * 0.4));
  const starts = [0, 0.2, 0.4, 0.6].map((share) =>
    Math.min(Math.floor(share * strip.columns), Math.max(0, strip.columns - piece)),
  );
  const middle = (strip.columns - 1) / 2;
  const overall = steepestSum(strip, 0, strip.columns, -steepest, steepest);
  const pieces = starts.map((start) => {
    const found = steepestSum(
      strip,
      start,
      Math.min(strip.columns, start + piece),
      overall.slope - 0.06,
      overall.slope + 0.06,
    );
    return { ...found, at: start + piece / 2 - middle };
  });
  const weights = pieces.reduce((sum, { weight }) => sum + weight, 0);
  const squares = pieces.reduce((sum, { weight, at }) => sum + weight * at * at, 0);
  const product = pieces.reduce(
    (sum, { weight, at, slope }) => sum + weight * at * (slope - overall.slope),
    0,
  );
  // As if one more piece at each end had found no change at all.
  const slopeChange = weights > 0 ? product / (squares + 0.15 * weights * (strip.columns / 4) ** 2) : 0;
  return { slope: overall.slope, slopeChange };
}

/** The slope within bounds at which the rows of some columns add up to the strongest profile, and how strongly. */
function steepestSum(
  strip: Strip,
  from: number,
  to: number,
  low: number,
  high: number,
): { slope: number; weight: number } {
  const step = 0.7 / Math.max(8, strip.rows * bunch);
  const count = Math.ceil((high - low) / step) + 1;
  const sums = Array.from({ length: count }, (_, index) => energy(strip, low + index * step, from, to));
  const best = sums.indexOf(Math.max(...sums));
  const here = sums[best] as number;
  const [left, right] = [sums[best - 1] ?? here, sums[best + 1] ?? here];
  const bend = left - 2 * here + right;
  const offset = bend < 0 ? Math.max(-0.5, Math.min(0.5, (left - right) / (2 * bend))) : 0;
  const mean = sum(sums) / count;
  return { slope: low + (best + offset) * step, weight: Math.max(0, here - mean) };
}

/** Strength of the profile of some columns, slid about the strip's middle row so that any slope sees the same wood. */
function energy(strip: Strip, slope: number, from: number, to: number): number {
  const { rows, columns, values } = strip;
  const sums = new Float64Array(to - from);
  const counts = new Float64Array(to - from);
  for (let row = 0; row < rows; row++) {
    const slide = slope * bunch * (row - rows / 2);
    const whole = Math.floor(slide);
    const share = slide - whole;
    for (let at = 0; at < sums.length; at++) {
      const column = from + at + whole;
      if (column < 0 || column + 1 >= columns) continue;
      const value =
        (values[row * columns + column] as number) * (1 - share) +
        (values[row * columns + column + 1] as number) * share;
      if (Number.isNaN(value)) continue;
      sums[at] = (sums[at] as number) + value;
      counts[at] = (counts[at] as number) + 1;
    }
  }
  let total = 0;
  for (let at = 0; at < sums.length; at++) {
    const count = counts[at] as number;
    if (count > rows / 4) total += ((sums[at] as number) / count) ** 2;
  }
  return total / sums.length;
}

/** The mean along the grain of some rows, at the middle of the band; nearer rows count more. NaN where too few rows reach. */
function stacked(
  strip: Strip,
  slope: number,
  slopeChange: number,
  fromRow: number,
  toRow: number,
): Float64Array {
  const { rows, columns, values, toMiddlePx } = strip;
  const profile = new Float64Array(columns);
  const needed = 0.3 * (toRow - fromRow);
  for (let at = 0; at < columns; at++) {
    const own = slope + slopeChange * (at - (columns - 1) / 2);
    let [sum, weights, count] = [0, 0, 0];
    for (let row = fromRow; row < toRow; row++) {
      const column = at + own * (row + toMiddlePx);
      const whole = Math.floor(column);
      if (whole < 0 || whole + 1 >= columns) continue;
      const share = column - whole;
      const value =
        (values[row * columns + whole] as number) * (1 - share) +
        (values[row * columns + whole + 1] as number) * share;
      if (Number.isNaN(value)) continue;
      const weight = 1 - (0.6 * row) / rows;
      sum += weight * value;
      weights += weight;
      count++;
    }
    profile[at] = count > needed ? sum / weights : Number.NaN;
  }
  return profile;
}

/** Slow part off, then each place divided by the spread about it; gaps become 0. */
function evened(profile: Float64Array): Float64Array {
  const fine = highPassed(profile);
  const squares = smoothed(
    fine.map((each) => each * each),
    fine.length / 5,
  );
  const least = 0.1 * spread(fine) ** 2 + 1e-9;
  return fine.map((each, at) =>
    Number.isNaN(each) ? 0 : each / Math.sqrt(Math.max(least, squares[at] as number)),
  );
}

function highPassed(profile: Float64Array): Float64Array {
  const slow = smoothed(profile, slowPart(profile.length));
  return profile.map((each, at) => each - (slow[at] as number));
}

/** What is wider than this, in steps, is taken for lighting. */
function slowPart(columns: number): number {
  return Math.max(4, columns / 14);
}

function spread(values: ArrayLike<number>): number {
  let [sum, count] = [0, 0];
  for (let at = 0; at < values.length; at++) {
    const value = values[at] as number;
    if (Number.isNaN(value)) continue;
    sum += value * value;
    count++;
  }
  return count > 0 ? Math.sqrt(sum / count) : 0;
}

/** A Gaussian mean along a row that leaves out what is NaN. */
function smoothed(line: ArrayLike<number>, sigma: number): Float64Array {
  const reach = Math.ceil(2.5 * sigma);
  const taps = Array.from({ length: reach + 1 }, (_, at) => Math.exp(-(at * at) / (2 * sigma * sigma)));
  return Float64Array.from({ length: line.length }, (_, at) => {
    let [sum, weights] = [0, 0];
    for (let to = Math.max(0, at - reach); to <= Math.min(line.length - 1, at + reach); to++) {
      const value = line[to] as number;
      if (Number.isNaN(value)) continue;
      const tap = taps[Math.abs(to - at)] as number;
      sum += tap * value;
      weights += tap;
    }
    return weights > 0 ? sum / weights : Number.NaN;
  });
}

/** The mean of what lies within a distance along a row, leaving out what is NaN; by running sums, since it is done for every row. */
function boxed(line: ArrayLike<number>, reach: number): Float64Array {
  const sums = new Float64Array(line.length + 1);
  const counts = new Float64Array(line.length + 1);
  for (let at = 0; at < line.length; at++) {
    const value = line[at] as number;
    const known = !Number.isNaN(value);
    sums[at + 1] = (sums[at] as number) + (known ? value : 0);
    counts[at + 1] = (counts[at] as number) + (known ? 1 : 0);
  }
  const whole = Math.round(reach);
  return Float64Array.from(sums.subarray(1), (_, at) => {
    const from = Math.max(0, at - whole);
    const to = Math.min(line.length, at + whole + 1);
    const count = (counts[to] as number) - (counts[from] as number);
    return count > 0 ? ((sums[to] as number) - (sums[from] as number)) / count : Number.NaN;
  });
}
