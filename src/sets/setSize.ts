/** What the numbers seen say of how many members a numbered set has. */
export type SetSize = {
  /** The estimate that is right on average: m + m/k − 1. May be broken. */
  unbiased: number;
  /** [size, probability], sizes rising. Without a largest size it is cut where 99 in 100 is told. */
  posterior: [number, number][];
  /** Share of the probability that `posterior` lists. */
  listed: number;
  median: number;
  /** The sizes at one twentieth and nineteen twentieths. */
  p90: [number, number];
  mean: number | null;
};

/** How probable each size was before: evenly up to a largest size, or size by size; undefined: evenly without end. */
export type SizePrior = { max: number } | { sizes: readonly (readonly [number, number])[] } | undefined;

/** At most so many sizes are listed where there is no largest. */
const mostListed = 2000;

/**
 * How large a set is, from the numbers seen on some of its members.
 *
 * Method: the members are numbered 1 to N, and which of them survive has nothing to do with their numbers. Then k
 * numbers with the largest m have the probability 1/C(N, k) for every N from m up; a prior times that is the posterior.
 * Without a prior every N counts alike, without end, which needs k ≥ 2: P(N ≤ n) = 1 − C(m − 1, k − 1)/C(n, k − 1).
 * The median is the smallest n with P(N ≤ n) ≥ ½. Sets bought or split in dozens and half-dozens are likelier than
 * others: give sizes where that is known.
 *
 * @param numbersSeen  number[k], whole, above 0, no two alike
 * @throws RangeError  if there are no numbers, if they repeat, if one number stands without a prior, or the prior has no
 *                     size as large as the largest number
 * @accuracy agrees with whole-number fractions to 1e-12
 * @source the German tank problem: Goodman 1952 for the estimate (from memory); posterior by Bayes’ rule, closed form
 */
export function setSize(numbersSeen: readonly number[], prior?: SizePrior): SetSize {
  const k = numbersSeen.length;
  const m = Math.max(...numbersSeen);
  if (k < 1 || new Set(numbersSeen).size < k)
    throw new RangeError(`setSize needs numbers, none of them twice, got ${numbersSeen.join(', ')}`);
  const unbiased = m + m / k - 1;
  if (prior === undefined) return { unbiased, ...endless(m, k) };
  const weights = 'max' in prior ? evenly(m, prior.max) : prior.sizes.filter(([n, p]) => n >= m && p > 0);
  const likelihood = likelihoodBySize(m, k);
  const masses = [...weights].sort((a, b) => a[0] - b[0]).map(([n, p]) => [n, p * likelihood(n)] as const);
  const total = masses.reduce((sum, [, mass]) => sum + mass, 0);
  if (!(total > 0)) throw new RangeError(`setSize needs a prior with a size of ${m} or more`);
  const posterior = masses.map(([n, mass]): [number, number] => [n, mass / total]);
  return {
    unbiased,
    posterior,
    listed: 1,
    median: quantile(posterior, 0.5),
    p90: [quantile(posterior, 0.05), quantile(posterior, 0.95)],
    mean: posterior.reduce((sum, [n, p]) => sum + n * p, 0),
  };
}

function evenly(m: number, max: number): [number, number][] {
  return Array.from({ length: Math.max(0, max - m + 1) }, (_, index) => [m + index, 1]);
}

/** 1/C(n, k) on the scale of its value at m, for n rising from call to call or not. */
function likelihoodBySize(m: number, k: number): (n: number) => number {
  const known = [1];
  return (n) => {
    for (let size = m + known.length; size <= n; size++)
      known.push(((known[known.length - 1] as number) * (size - k)) / size);
    return known[n - m] as number;
  };
}

/** The posterior with every size counting alike, without end. */
function endless(m: number, k: number): Omit<SetSize, 'unbiased'> {
  if (k < 2) throw new RangeError('setSize needs two numbers, or a prior');
  const posterior: [number, number][] = [];
  // P(N > n), by its own recurrence, so that far tails lose nothing.
  let beyond = 1;
  let probability = (k - 1) / m;
  // At n = m: (k−1)/k · C(m−1, k−1)/C(m, k) = (k−1)/m; P(N > m) = C(m−1, k−1)/C(m, k−1) = (m−k+1)/m.
  const quantiles = new Map<number, number>();
  for (let n = m; ; n++) {
    if (n > m) probability *= (n - k) / n;
    beyond *= (n - k + 1) / n;
    if (posterior.length < mostListed) posterior.push([n, probability]);
    for (const share of [0.05, 0.5, 0.95, 0.99])
      if (!quantiles.has(share) && 1 - beyond >= share - 1e-12) quantiles.set(share, n);
    if (quantiles.has(0.99) || (quantiles.has(0.95) && posterior.length >= mostListed)) break;
  }
  return {
    posterior,
    listed: posterior.reduce((sum, [, p]) => sum + p, 0),
    median: quantiles.get(0.5) as number,
    p90: [quantiles.get(0.05) as number, quantiles.get(0.95) as number],
    mean: k > 2 ? ((m - 1) * (k - 1)) / (k - 2) : null,
  };
}

/** The smallest size up to which at least `share` of the probability lies. */
function quantile(posterior: readonly (readonly [number, number])[], share: number): number {
  let held = 0;
  for (const [n, p] of posterior) {
    held += p;
    if (held >= share - 1e-12) return n;
  }
  return (posterior[posterior.length - 1] as readonly [number, number])[0];
}
