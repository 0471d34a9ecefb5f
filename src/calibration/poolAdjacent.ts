/** The rising steps nearest to a row of values. */
export type PooledSteps = {
  /** number[n]: the fitted value at each place. */
  fit: number[];
  /** How many places each step is long; neighbours of one height are one step. */
  blocks: number[];
};

/**
 * The row nearest to given values, by squares, that nowhere falls.
 *
 * Method: pool adjacent violators: a value below the step before it is pooled with it, by their weights, until nothing falls.
 *
 * @param values   number[n]
 * @param weights  number[n], above 0; 1 each where left out
 * @source Ayer and others, Annals of Mathematical Statistics 26 (1955), from memory
 */
export function poolAdjacent(values: readonly number[], weights?: readonly number[]): PooledSteps {
  const steps: { mean: number; weight: number; count: number }[] = [];
  values.forEach((value, index) => {
    let step = { mean: value, weight: weights?.[index] ?? 1, count: 1 };
    for (let last = steps.at(-1); last !== undefined && last.mean >= step.mean; last = steps.at(-1)) {
      steps.pop();
      const weight = last.weight + step.weight;
      const mean =
        last.mean === step.mean ? step.mean : (last.mean * last.weight + step.mean * step.weight) / weight;
      step = { mean, weight, count: last.count + step.count };
    }
    steps.push(step);
  });
  return {
    fit: steps.flatMap(({ mean, count }) => new Array<number>(count).fill(mean)),
    blocks: steps.map(({ count }) => count),
  };
}
