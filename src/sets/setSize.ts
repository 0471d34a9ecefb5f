/** What the numbers seen say of how many members a numbered set has. */
export type SetSize = {
  /** The estimate that is right on average. May be broken. */
  unbiased: number;
  /** [size, probability], sizes rising. Without a largest size it is cut where 99 in 100 is told. */
  posterior: [number, number][];
  /** Share of the probability that `posterior` lists. */
  listed: number;
  median: number;
  /** The sizes at one twentieth and nineteen twentieths. */
  p90: [number, number];
  /** null where it has no end, and without a largest size where the first number is unknown. */
  mean: number | null;
  /** Standard deviation: null where it has no end, and without a largest size where the first number is unknown. */
  sd: number | null;
  /** [share, size up to which that share lies], for the shares asked for. */
  quantiles: [number, number][];
  /** Where the run begins and ends by the unbiased estimate, where the first number is unknown. May be broken. */
  run: [number, number] | undefined;
};

/** How probable each size was before: evenly up to a largest size, or size by size; undefined: evenly without end. */
export type SizePrior = { max: number } | { sizes: readonly (readonly [number, number])[] } | undefined;

/** At most so many sizes are listed where there is no largest. */
const mostListed = 2000;

/**
 * How large a set is, from the numbers seen on some of its members.
 *
 * Method: the members are numbered on from 1, and which of them survive has nothing to do with their numbers. Then k
 * numbers with the largest m have the probability 1/C(N, k) for every size N from m up; a prior times that is the
 * posterior. Without a prior every N counts alike, without end, which needs k ≥ 2: its sum is m/(k − 1) on the scale of
 * its first term. The median is the smallest n with P(N ≤ n) ≥ ½. Where the first number is unknown, as in the inventory
 * of a house, the run may lie anywhere over the numbers seen: with r = largest − smallest + 1 every N from r up has
 * (N − r + 1)/C(N, k), whose endless sum needs k ≥ 3 and is r(r − 1)/((k − 1)(k − 2)). The estimates are m + m/k − 1 and
 * (largest − smallest)(k + 1)/(k − 1) − 1.
 *
 * @param numbersSeen  number[k], whole, above 0, no two alike
 * @param first        whether the numbering begins with 1
 * @param shares       shares (0–1) whose sizes are wanted besides
 * @throws RangeError  if there are too few numbers, if they repeat, or the prior has no size large enough
 * @accuracy agrees with whole-number fractions to 1e-9 and better
 * @source the serial-number problem: Goodman 1952 for the estimates (from memory); posteriors by Bayes’ rule, closed form
 */
export function setSize(
  numbersSeen: readonly number[],
  prior?: SizePrior,
  first: 'one' | 'unknown' = 'one',
  shares: readonly number[] = [],
): SetSize {
  const k = numbersSeen.length;
  if (k < 1 || new Set(numbersSeen).size < k)
    throw new RangeError(`setSize needs numbers, none of them twice, got ${numbersSeen.join(', ')}`);
  if (k < leastNumbers(prior, first))
    throw new RangeError(`setSize needs ${leastNumbers(prior, first)} numbers here, got ${k}`);
  const largest = Math.max(...numbersSeen);
  const range = largest - Math.min(...numbersSeen);
  const least = first === 'one' ? largest : range + 1;
  const unbiased = first === 'one' ? largest + largest / k - 1 : (range * (k + 1)) / (k - 1) - 1;
  const end = range / (k - 1) - 1;
  const run: SetSize['run'] = first === 'one' ? undefined : [largest - range - end, largest + end];
  const falling = likelihoodBySize(least, k);
  const likelihood = first === 'one' ? falling : (n: number) => falling(n) * (n - least + 1);
  if (prior === undefined) {
    const total = first === 'one' ? least / (k - 1) : (least * (least - 1)) / ((k - 1) * (k - 2));
    const mean = first === 'one' && k > 2 ? ((least - 1) * (k - 1)) / (k - 2) : null;
    const sd =
      first === 'one' && k > 3
        ? Math.sqrt(((k - 1) * (least - 1) * (least - k + 1)) / ((k - 3) * (k - 2) ** 2))
        : null;
    return { unbiased, ...endless(least, (n) => likelihood(n) / total, shares), mean, sd, run };
  }
  const weights =
    'max' in prior ? evenly(least, prior.max) : prior.sizes.filter(([n, p]) => n >= least && p > 0);
  const masses = [...weights].sort((a, b) => a[0] - b[0]).map(([n, p]) => [n, p * likelihood(n)] as const);
  const total = masses.reduce((sum, [, mass]) => sum + mass, 0);
  if (!(total > 0)) throw new RangeError(`setSize needs a prior with a size of ${least} or more`);
  const posterior = masses.map(([n, mass]): [number, number] => [n, mass / total]);
  const mean = posterior.reduce((sum, [n, p]) => sum + n * p, 0);
  return {
    unbiased,
    posterior,
    listed: 1,
    median: quantile(posterior, 0.5),
    p90: [quantile(posterior, 0.05), quantile(posterior, 0.95)],
    mean,
    sd: Math.sqrt(posterior.reduce((sum, [n, p]) => sum + p * (n - mean) ** 2, 0)),
    quantiles: shares.map((share) => [share, quantile(posterior, share)]),
    run,
  };
}

/** How many numbers it takes to say anything. */
export function leastNumbers(prior: SizePrior, first: 'one' | 'unknown'): 1 | 2 | 3 {
  if (first === 'one') return prior === undefined ? 2 : 1;
  return prior === undefined ? 3 : 2;
}

function evenly(least: number, max: number): [number, number][] {
  return Array.from({ length: Math.max(0, max - least + 1) }, (_, index) => [least + index, 1]);
}

/** 1/C(n, k) on the scale of its value at the least size, for n rising from call to call or not. */
function likelihoodBySize(least: number, k: number): (n: number) => number {
  const known = [1];
  return (n) => {
    for (let size = least + known.length; size <= n; size++)
      known.push(((known[known.length - 1] as number) * (size - k)) / size);
    return known[n - least] as number;
  };
}

/** The posterior with every size counting alike, without end: listed to 99 in 100, or as far as a list is of use. */
function endless(
  least: number,
  probability: (n: number) => number,
  shares: readonly number[],
): Pick<SetSize, 'posterior' | 'listed' | 'median' | 'p90' | 'quantiles'> {
  const posterior: [number, number][] = [];
  const quantiles = new Map<number, number>();
  const needed = [0.05, 0.5, 0.95, ...shares];
  const last = Math.max(...needed);
  let held = 0;
  for (let n = least; !quantiles.has(last) || (!quantiles.has(0.99) && posterior.length < mostListed); n++) {
    const p = probability(n);
    held += p;
    if (posterior.length < mostListed && !quantiles.has(0.99)) posterior.push([n, p]);
    for (const share of [0.99, ...needed])
      if (!quantiles.has(share) && held >= share - slack) quantiles.set(share, n);
  }
  return {
    posterior,
    listed: posterior.reduce((sum, [, p]) => sum + p, 0),
    median: quantiles.get(0.5) as number,
    p90: [quantiles.get(0.05) as number, quantiles.get(0.95) as number],
    quantiles: shares.map((share) => [share, quantiles.get(share) as number]),
  };
}

/** The smallest size up to which at least `share` of the probability lies. */
function quantile(posterior: readonly (readonly [number, number])[], share: number): number {
  let held = 0;
  for (const [n, p] of posterior) {
    held += p;
    if (held >= share - slack) return n;
  }
  return (posterior[posterior.length - 1] as readonly [number, number])[0];
}

/** Rounding must not push a quantile on by one. */
const slack = 1e-10;
