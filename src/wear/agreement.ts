/** How well the wear that is there agrees with where use would wear. */
export type Agreement = {
  /** The chance that a worn place is more touched than one that is not: 1 all agrees, ½ chance, 0 all against. */
  auc: number;
  aucSigma: number;
  /** Spearman’s rank correlation of wear and touch. */
  rank: number;
  rankSigma: number;
  places: number;
};

/** Places next to each other are worn together: so many of them count as one. A judgement. */
const together = 3;

/**
 * Holds painted wear against how much each place is touched.
 *
 * Method: worn is what was painted at half of the deepest wear or more; the area under the curve is the share of pairs, one worn and
 * one not, in which the worn is more touched, ties half. Its uncertainty by Hanley and McNeil with a third of the counts, for neighbours wear together;
 * that of the rank correlation by 1/√(n/3 − 3), once turned from Fisher’s z.
 *
 * @param touched  number[n], n ≥ 12
 * @param worn     number[n], 0 (sharp) to 1 (deepest)
 * @returns undefined where nothing, or everything alike, was painted
 * @accuracy the area is that of counting every pair, by test; the rank correlation that of an example by hand
 * @source Hanley and McNeil 1982, from memory; Spearman 1904
 */
export function agreement(touched: readonly number[], worn: readonly number[]): Agreement | undefined {
  const deepest = Math.max(...worn);
  const isWorn = worn.map((each) => deepest > 0 && each >= deepest / 2);
  const count = isWorn.filter(Boolean).length;
  if (count === 0 || count === worn.length) return undefined;
  const ranks = ranked(touched);
  const sum = ranks.reduce((total, each, index) => total + (isWorn[index] ? each : 0), 0);
  const others = worn.length - count;
  const auc = (sum - (count * (count + 1)) / 2) / (count * others);
  const [q1, q2] = [auc / (2 - auc), (2 * auc * auc) / (1 + auc)];
  const [a, b] = [Math.max(1, count / together), Math.max(1, others / together)];
  const variance = (auc * (1 - auc) + (a - 1) * (q1 - auc * auc) + (b - 1) * (q2 - auc * auc)) / (a * b);
  const rank = correlation(ranks, ranked(worn));
  const rankSigma = (1 - rank * rank) / Math.sqrt(Math.max(1, worn.length / together - 3));
  return {
    auc,
    aucSigma: Math.sqrt(Math.max(variance, 1 / (4 * a * b))),
    rank,
    rankSigma,
    places: worn.length,
  };
}

/** Ranks from 1, ties sharing the mean of theirs. */
function ranked(values: readonly number[]): number[] {
  const order = values.map((_, index) => index).sort((a, b) => (values[a] as number) - (values[b] as number));
  const ranks = values.map(() => 0);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1] as number] === values[order[from] as number]) to++;
    for (let at = from; at <= to; at++) ranks[order[at] as number] = (from + to) / 2 + 1;
    from = to + 1;
  }
  return ranks;
}

function correlation(one: readonly number[], two: readonly number[]): number {
  const mean = (one.length + 1) / 2;
  let [both, first, second] = [0, 0, 0];
  one.forEach((each, index) => {
    const [a, b] = [each - mean, (two[index] as number) - mean];
    both += a * b;
    first += a * a;
    second += b * b;
  });
  return first > 0 && second > 0 ? both / Math.sqrt(first * second) : 0;
}
