import type { Random } from '../ground/seededRandom.ts';
import { mean, quantile } from '../ground/statistics.ts';

/**
 * Between which values would the weighted mean lie, had other sales of the same kind come in?
 *
 * Method: as many sales as there are, drawn again and again with their weights as chances, and their mean taken; the range holds the middle
 * share of these means. It tells of the scatter among the sales that were chosen and of nothing else, and with few of them it is too narrow.
 *
 * @param share  the share the range holds, 0–1
 * @returns undefined for a single value, which shows no scatter
 * @source the bootstrap, Efron (1979), from memory
 */
export function resampledRange(
  values: readonly number[],
  weights: readonly number[],
  share: number,
  draws: number,
  random: Random,
): [number, number] | undefined {
  if (values.length < 2) return undefined;
  const all = weights.reduce((sum, each) => sum + each, 0);
  const upTo = weights.map(
    (_, index) => weights.slice(0, index + 1).reduce((sum, each) => sum + each, 0) / all,
  );
  const draw = () => {
    const at = random();
    const found = upTo.findIndex((edge) => at < edge);
    return values[found < 0 ? values.length - 1 : found] as number;
  };
  const means = Float64Array.from({ length: draws }, () => mean(values.map(draw))).sort();
  return [quantile(means, (1 - share) / 2), quantile(means, (1 + share) / 2)];
}
