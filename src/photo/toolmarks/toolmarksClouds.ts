import { mean as meanOf } from '../../ground/statistics.ts';

/** Where the drawn surfaces of one kind lie among the features: their middle, and what turns a departure into one of spread 1 in all directions. */
export type MarkCloud = {
  mean: number[];
  /** The inverse of the covariance’s lower Cholesky factor, row by row, each as long as its number. */
  whiten: number[][];
};

/** Share of a feature’s own variance that is added, so that few surfaces don’t make a cloud too thin. */
const added = 0.1;

/**
 * The cloud of one kind’s features.
 *
 * @param rows  scaled features of its surfaces, at least two
 * @source Mahalanobis 1936 (from memory); the covariance shrunk towards its diagonal, common practice
 */
export function cloudOf(rows: readonly (readonly number[])[]): MarkCloud {
  const size = rows[0]?.length ?? 0;
  const mean = Array.from({ length: size }, (_, i) => meanOf(rows.map((row) => row[i] as number)));
  const between = (i: number, j: number) =>
    meanOf(
      rows.map(
        (row) => ((row[i] as number) - (mean[i] as number)) * ((row[j] as number) - (mean[j] as number)),
      ),
    );
  const factor: number[][] = [];
  for (let i = 0; i < size; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? row : (factor[j] as number[]);
      let value = i === j ? (1 + added) * between(i, i) + 0.01 : between(i, j);
      for (let k = 0; k < j; k++) value -= (row[k] as number) * (other[k] as number);
      row.push(i === j ? Math.sqrt(value) : value / (other[j] as number));
    }
    factor.push(row);
  }
  return { mean, whiten: inverted(factor) };
}

/** How far features lie from the nearest cloud, in spreads (Mahalanobis’ distance). */
export function farFromClouds(scaled: readonly number[], clouds: readonly MarkCloud[]): number {
  const far = clouds.map(({ mean, whiten }) =>
    Math.hypot(
      ...whiten.map((row) =>
        row.reduce(
          (sum, weight, index) => sum + weight * ((scaled[index] as number) - (mean[index] as number)),
          0,
        ),
      ),
    ),
  );
  return Math.min(...far);
}

/** The inverse of a lower triangle, by rows. */
function inverted(factor: readonly number[][]): number[][] {
  const out: number[][] = [];
  factor.forEach((row, i) => {
    const own = row[i] as number;
    out.push(
      Array.from({ length: i + 1 }, (_, j) => {
        if (j === i) return 1 / own;
        let sum = 0;
        for (let k = j; k < i; k++) sum += (row[k] as number) * ((out[k] as number[])[j] as number);
        return -sum / own;
      }),
    );
  });
  return out;
}
