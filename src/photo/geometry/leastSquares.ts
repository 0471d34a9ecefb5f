import { Matrix, solve } from 'ml-matrix';

/** How far each observation lies off, and how that moves with each parameter. */
export type Residuals = { values: number[]; jacobian: number[][] };

/** The parameters that fit best, what is left, and the inverse normal matrix: times σ² it is the covariance. */
export type Fit = { parameters: number[]; squares: number; cofactor: number[][]; settled: boolean };

const mostSteps = 200;

/** Near the end the squares differ by less than the arithmetic holds: a step that leaves them so nearly equal is taken. */
const evenSquares = 1 + 1e-13;

/**
 * Which parameters make the squares of the residuals smallest, starting from a good guess?
 *
 * Method: Gauss–Newton, damped (Levenberg and Marquardt) where a full step would not make the squares smaller. The caller
 * scales the problem so that parameters are of order 1.
 *
 * @param start     parameters to begin with
 * @param residuals values number[n] and jacobian number[n][p] at given parameters; undefined where they can't be
 * @returns undefined where the start itself can't be, or the normal matrix can't be inverted at the end
 */
export function leastSquares(
  start: readonly number[],
  residuals: (parameters: readonly number[]) => Residuals | undefined,
): Fit | undefined {
  let parameters = [...start];
  let now = residuals(parameters);
  if (now === undefined) return undefined;
  let squares = sumOfSquares(now.values);
  let damping = 0;
  let settled = squares === 0;
  for (let step = 0; step < mostSteps && !settled; step++) {
    const move: number[] | undefined = dampedStep(now, damping);
    const next: number[] | undefined = move && parameters.map((value, i) => value + (move[i] as number));
    const there: Residuals | undefined = next && residuals(next);
    const squaresThere = there === undefined ? Number.POSITIVE_INFINITY : sumOfSquares(there.values);
    const size = move === undefined ? Number.POSITIVE_INFINITY : Math.hypot(...move);
    if (there !== undefined && next !== undefined && squaresThere <= squares * evenSquares) {
      settled = size < 1e-15 * (1 + Math.hypot(...parameters));
      parameters = next;
      now = there;
      squares = squaresThere;
      damping = damping < 1e-9 ? 0 : damping / 10;
    } else {
      settled = size < 1e-12 * (1 + Math.hypot(...parameters));
      damping = damping === 0 ? 1e-6 : damping * 10;
      if (damping > 1e12) break;
    }
  }
  const cofactor = inverted(normalMatrix(now.jacobian));
  return cofactor === undefined ? undefined : { parameters, squares, cofactor, settled };
}

function dampedStep({ values, jacobian }: Residuals, damping: number): number[] | undefined {
  const normal = normalMatrix(jacobian);
  const size = normal.length;
  const gradient = Array.from({ length: size }, (_, i) =>
    jacobian.reduce((sum, row, n) => sum - (row[i] as number) * (values[n] as number), 0),
  );
  for (let i = 0; i < size; i++) (normal[i] as number[])[i] = (normal[i]?.[i] as number) * (1 + damping);
  try {
    const move = solve(new Matrix(normal), Matrix.columnVector(gradient)).to1DArray();
    return move.every(Number.isFinite) ? move : undefined;
  } catch {
    return undefined;
  }
}

/** JᵀJ of a jacobian number[n][p]. */
export function normalMatrix(jacobian: readonly (readonly number[])[]): number[][] {
  const size = jacobian[0]?.length ?? 0;
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (const row of jacobian) {
    for (let i = 0; i < size; i++) {
      const into = normal[i] as number[];
      for (let j = 0; j < size; j++) into[j] = (into[j] as number) + (row[i] as number) * (row[j] as number);
    }
  }
  return normal;
}

/** The inverse of a symmetric positive matrix, its rows and columns brought to like size first; undefined where there is none. */
export function inverted(normal: readonly (readonly number[])[]): number[][] | undefined {
  const scale = normal.map((row, i) => 1 / Math.sqrt(row[i] as number));
  if (!scale.every(Number.isFinite)) return undefined;
  const scaled = normal.map((row, i) =>
    row.map((value, j) => value * (scale[i] as number) * (scale[j] as number)),
  );
  try {
    const inverse = solve(new Matrix(scaled), Matrix.eye(normal.length)).to2DArray();
    const back = inverse.map((row, i) =>
      row.map((value, j) => value * (scale[i] as number) * (scale[j] as number)),
    );
    return back.every((row, i) => row.every(Number.isFinite) && (row[i] as number) >= 0) ? back : undefined;
  } catch {
    return undefined;
  }
}

function sumOfSquares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
