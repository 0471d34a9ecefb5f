/** Any row of numbers: a list or a typed array. */
type Row = Iterable<number> & { readonly length: number };

/** The sum, taken in order; 0 for none. */
export function sum(values: Iterable<number>): number {
  let total = 0;
  for (const each of values) total += each;
  return total;
}

/** The arithmetic mean; NaN for none. */
export function mean(values: Row): number {
  return sum(values) / values.length;
}

/** The middle value, or the mean of the two middle ones; NaN for none. */
export function median(values: Iterable<number>): number {
  const rising = Float64Array.from(values).sort();
  const half = Math.floor(rising.length / 2);
  const upper = rising[half] ?? Number.NaN;
  return rising.length % 2 === 1 ? upper : ((rising[half - 1] ?? Number.NaN) + upper) / 2;
}

/**
 * The value below which a share of them lies, by a straight line between the two nearest.
 *
 * @param rising  the values from the least to the greatest
 * @param share   0–1
 * @returns NaN for none
 * @source Hyndman and Fan, The American Statistician 50 (1996) 361–365, type 7: from memory
 */
export function quantile(rising: ArrayLike<number>, share: number): number {
  const at = (rising.length - 1) * share;
  const low = rising[Math.floor(at)] ?? Number.NaN;
  return low + ((rising[Math.ceil(at)] ?? low) - low) * (at - Math.floor(at));
}
