import { type FittedLine, fitLine } from '../sets/fitLine.ts';

/** One piece sold twice. */
export type ResalePair = {
  firstPeriod: number;
  firstPrice: number;
  secondPeriod: number;
  secondPrice: number;
};

/** An index from pieces that were sold twice. */
export type RepeatSalesIndex = {
  periods: number[];
  /** 100 in the first period. */
  index: number[];
  logIndex: number[];
  logIndexSd: number[];
  residualSd: number;
};

/**
 * How did prices go, by pieces that were sold twice?
 *
 * Method: least squares of the log ratio of the two prices on −1 and +1 for the two periods, the first period as base; a weight multiplies
 * a pair's squared error.
 *
 * @param weights  one a pair, above 0; all 1 where left out
 * @returns undefined where the pairs do not link all periods, or there are fewer pairs than periods less one
 * @source Bailey, Muth and Nourse (1963), from memory; held against values reckoned outside this program
 */
export function repeatSalesIndex(
  pairs: readonly ResalePair[],
  weights?: readonly number[],
): RepeatSalesIndex | undefined {
  const periods = [
    ...new Set(pairs.flatMap(({ firstPeriod, secondPeriod }) => [firstPeriod, secondPeriod])),
  ].toSorted((a, b) => a - b);
  const roots = pairs.map((_, index) => Math.sqrt(weights?.[index] ?? 1));
  const sign = ({ firstPeriod, secondPeriod }: ResalePair, period: number) =>
    (secondPeriod === period ? 1 : 0) - (firstPeriod === period ? 1 : 0);
  const columns = periods
    .slice(1)
    .map((period) => pairs.map((pair, index) => sign(pair, period) * (roots[index] as number)));
  const y = pairs.map(
    ({ firstPrice, secondPrice }, index) => Math.log(secondPrice / firstPrice) * (roots[index] as number),
  );
  if (columns.length === 0 || pairs.length < columns.length) return undefined;
  const fitted: FittedLine | undefined = fitLine(columns, y, false);
  if (fitted === undefined) return undefined;
  const logIndex = [0, ...fitted.coefficients];
  return {
    periods,
    logIndex,
    index: logIndex.map((each) => 100 * Math.exp(each)),
    logIndexSd: [0, ...fitted.coefficientSd],
    residualSd: fitted.residualSd,
  };
}
