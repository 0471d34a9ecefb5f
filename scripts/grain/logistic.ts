import { inverse, Matrix } from 'ml-matrix';

/** Weights of a logistic regression, and their covariance. */
export type Fitted = { weights: number[]; covariance: number[][] };

/**
 * Weights that turn features into the logarithm of the odds; each side counts as much as the other, whatever their numbers, so the odds are a
 * likelihood ratio.
 *
 * @param ridge  pull towards 0 on all but the first, as the precision of a normal prior
 * @source iteratively reweighted least squares, common practice
 */
export function fitLogistic(features: readonly number[][], truth: readonly boolean[], ridge = 0.5): Fitted {
  const size = (features[0] as number[]).length;
  const yes = truth.filter(Boolean).length;
  const share = (isTrue: boolean) => truth.length / 2 / (isTrue ? yes : truth.length - yes);
  let weights = new Array<number>(size).fill(0);
  let covariance = Matrix.eye(size);
  for (let turn = 0; turn < 50; turn++) {
    const gradient = weights.map((each, at) => (at === 0 ? 0 : -ridge * each));
    const bend = Matrix.eye(size).mul(ridge);
    bend.set(0, 0, 1e-9);
    features.forEach((row, index) => {
      const isTrue = truth[index] as boolean;
      const odds = row.reduce((sum, each, at) => sum + each * (weights[at] as number), 0);
      const probability = 1 / (1 + Math.exp(-odds));
      const counts = share(isTrue);
      for (let i = 0; i < size; i++) {
        gradient[i] =
          (gradient[i] as number) + counts * ((isTrue ? 1 : 0) - probability) * (row[i] as number);
        for (let j = 0; j < size; j++) {
          bend.set(
            i,
            j,
            bend.get(i, j) +
              counts * probability * (1 - probability) * (row[i] as number) * (row[j] as number),
          );
        }
      }
    });
    covariance = inverse(bend);
    const step = covariance.mmul(Matrix.columnVector(gradient)).to1DArray();
    weights = weights.map((each, at) => each + (step[at] as number));
    if (Math.max(...step.map(Math.abs)) < 1e-9) break;
  }
  return { weights, covariance: covariance.to2DArray() };
}
