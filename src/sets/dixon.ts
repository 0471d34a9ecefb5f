/** Dixon’s ratio at either end, and whether the end further out stands out at 90 and at 95 in 100. */
export type Dixon = { low: number; high: number; value: number; at90: boolean; at95: boolean };

/** Critical values for 3 to 10 values. */
const critical90 = [0.941, 0.765, 0.642, 0.56, 0.507, 0.468, 0.437, 0.412];
const critical95 = [0.97, 0.829, 0.71, 0.625, 0.568, 0.526, 0.493, 0.466];

/**
 * Dixon’s Q: the gap between the outermost value and its neighbour over the whole range.
 *
 * @returns undefined with fewer than 3 or more than 10 values, for which there is no table here, or where all are alike
 * @source Dixon 1951; two-sided critical values: Rorabacher 1991, from memory
 */
export function dixon(values: readonly number[]): Dixon | undefined {
  const rising = [...values].sort((a, b) => a - b);
  const n = rising.length;
  const at = (index: number) => rising[index] as number;
  if (n < 3 || n > 10 || !(at(n - 1) > at(0))) return undefined;
  const range = at(n - 1) - at(0);
  const [low, high] = [(at(1) - at(0)) / range, (at(n - 1) - at(n - 2)) / range];
  const most = Math.max(low, high);
  return {
    low,
    high,
    value: low >= high ? at(0) : at(n - 1),
    at90: most > (critical90[n - 3] as number),
    at95: most > (critical95[n - 3] as number),
  };
}
