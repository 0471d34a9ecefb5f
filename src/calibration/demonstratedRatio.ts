/**
 * How large a likelihood ratio settled cases bear out: the largest up to which going by the ratios would have misled less than
 * knowing nothing, had one more misleading ratio as large come up.
 *
 * Method: a threshold t > 1 stands for odds of 1 to t before the ratio is known. Whoever believes the side where the ratio is t
 * or more errs by the share of its true cases below t, and t times the share of the false ones at or above it, one such false
 * case being added; knowing nothing errs by 1. The first t from 1 up at which the first is no longer less than the second is the answer.
 *
 * @param whenTrue   natural logarithms of the ratios for a side, of the cases where it was true
 * @param whenFalse  the same of the cases where it was not
 * @returns the ratio, 1 where nothing is borne out; at most one more than there are false cases
 * @source Vergeer, van Es, de Jongh, Alberink and Stoel, Science & Justice 56 (2016) 482–491 (its abstract read, the sum from memory)
 */
export function demonstratedRatio(whenTrue: readonly number[], whenFalse: readonly number[]): number {
  if (whenTrue.length === 0 || whenFalse.length === 0) return 1;
  const steps = [...new Set([...whenTrue, ...whenFalse])].filter((log) => log > 0).sort((a, b) => a - b);
  let from = 1;
  for (const to of [...steps.map(Math.exp), Number.POSITIVE_INFINITY]) {
    const missed = whenTrue.filter((log) => Math.exp(log) <= from).length / whenTrue.length;
    const misled = (whenFalse.filter((log) => Math.exp(log) > from).length + 1) / (whenFalse.length + 1);
    const atMost = (1 - missed) / misled;
    if (atMost <= to) return Math.max(from, atMost);
    from = to;
  }
  return from;
}
