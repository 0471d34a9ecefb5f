/** How good a set of probabilities or likelihood ratios was, once the truth is known. Proper scores, lower is better. */

/**
 * The log-likelihood-ratio cost: 0 for perfect ratios, 1 for ratios that say nothing, above 1 for ratios that mislead.
 *
 * @param logRatiosWhenTrue   natural logarithms of the ratios where the first side was true
 * @param logRatiosWhenFalse  and where it was false
 * @returns undefined when one side has no case: the cost is then not defined
 * @source Brümmer and du Preez, Computer Speech and Language 20 (2006) 230–275
 */
export function logRatioCost(
  logRatiosWhenTrue: readonly number[],
  logRatiosWhenFalse: readonly number[],
): number | undefined {
  if (logRatiosWhenTrue.length === 0 || logRatiosWhenFalse.length === 0) return undefined;
  const cost = (logs: readonly number[], sign: number) =>
    logs.reduce((sum, each) => sum + softPlus(sign * each) / Math.LN2, 0) / logs.length;
  return (cost(logRatiosWhenTrue, -1) + cost(logRatiosWhenFalse, 1)) / 2;
}

/** ln(1 + e^x), also where e^x would overflow. */
function softPlus(x: number): number {
  if (x === Number.POSITIVE_INFINITY) return x;
  return Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));
}

/**
 * The Brier score over several outcomes: the mean squared distance of the probabilities from what came true, halved so
 * that two outcomes give the usual mean (p − o)².
 *
 * @param forecasts  for each case the probabilities of all outcomes, and which came true
 * @source Brier, Monthly Weather Review 78 (1950) 1–3
 */
export function brierScore(
  forecasts: readonly { probabilities: readonly number[]; truth: number }[],
): number {
  const one = (each: { probabilities: readonly number[]; truth: number }) =>
    each.probabilities.reduce((sum, p, outcome) => sum + (p - (outcome === each.truth ? 1 : 0)) ** 2, 0) / 2;
  return forecasts.reduce((sum, each) => sum + one(each), 0) / forecasts.length;
}

/** The mean of −log2 of the probability given to what came true: 0 is perfect; a certain error is infinite. */
export function logScoreBits(
  forecasts: readonly { probabilities: readonly number[]; truth: number }[],
): number {
  return (
    forecasts.reduce((sum, each) => sum - Math.log2(each.probabilities[each.truth] ?? 0), 0) /
    forecasts.length
  );
}
