import { exact } from './exactMoney.ts';

/** What an amount comes to when an index goes from one value to another. */
export type IndexedAmount = { amount: number; factor: number; pointChange: number; percentChange: number };

/**
 * What would an amount of then be, had it gone with an index since?
 *
 * Method: amount × index then ÷ index before, in exact fractions; nothing is rounded.
 *
 * @param fromIndex,toIndex  above 0
 * @source U.S. Bureau of Labor Statistics, Using the Consumer Price Index for Escalation (1989)
 */
export function indexedAmount(amount: number, fromIndex: number, toIndex: number): IndexedAmount {
  const [from, to] = [exact(fromIndex), exact(toIndex)];
  const factor = to.div(from);
  return {
    amount: exact(amount).mul(factor).valueOf(),
    factor: factor.valueOf(),
    pointChange: to.sub(from).valueOf(),
    percentChange: factor.sub(1).mul(100).valueOf(),
  };
}

/** A number to as many figures as it can carry: 2,682.4 to two is 2,700. */
export function toFigures(value: number, figures: number): number {
  return value === 0 ? 0 : Number(value.toPrecision(figures));
}
