import { EVD, Matrix, SVD, solve } from 'ml-matrix';
import type { Point } from '../picture.ts';
import { frameOf, intoFrame, isSpread, outOfFrame } from './frame.ts';

/** A circle. */
export type Circle = { centre: Point; radius: number };

/** The ways to fit one without iterating: each makes another algebraic error smallest. */
export type AlgebraicWay = 'kasa' | 'pratt' | 'taubin';

/**
 * Which circle makes the algebraic error A(x²+y²) + Bx + Cy + D smallest?
 *
 * Method: Kåsa fixes A = 1 and draws short arcs too small; Pratt takes B² + C² − 4AD = 1, Taubin divides by the mean squared
 * gradient: both nearly free of that fault. In coordinates about the middle of the points, scaled to order 1.
 *
 * @param points  Point[n], n ≥ 3
 * @returns undefined where the points lie in one line
 * @source I. Kåsa (1976); V. Pratt (1987); G. Taubin (1991); in the form of N. Chernov, Circular and Linear Regression (2010),
 *   chapter 5; from memory
 */
export function algebraicCircle(points: readonly Point[], way: AlgebraicWay): Circle | undefined {
  const frame = frameOf(points);
  const framed = points.map((point) => intoFrame(frame, point));
  if (!isSpread(framed)) return undefined;
  const conic = ways[way](framed);
  const [a, b, c, d] = conic;
  const square = b * b + c * c - 4 * a * d;
  const radius = Math.sqrt(square) / (2 * Math.abs(a));
  if (!Number.isFinite(radius) || radius > 1e8) return undefined;
  return {
    centre: outOfFrame(frame, [-b / (2 * a), -c / (2 * a)]),
    radius: radius / frame.scale,
  };
}

type Conic = [number, number, number, number];

const ways: Record<AlgebraicWay, (points: readonly Point[]) => Conic> = { kasa, pratt, taubin };

function kasa(points: readonly Point[]): Conic {
  const rows = points.map(([x, y]) => [x, y, 1]);
  const right = points.map(([x, y]) => -(x * x + y * y));
  const [b, c, d] = solve(new Matrix(rows), Matrix.columnVector(right), true).to1DArray() as [
    number,
    number,
    number,
  ];
  return [1, b, c, d];
}

function pratt(points: readonly Point[]): Conic {
  const rows = points.map(([x, y]) => [x * x + y * y, x, y, 1]);
  while (rows.length < 4) rows.push([0, 0, 0, 0]);
  const svd = new SVD(new Matrix(rows), { autoTranspose: true });
  const [sizes, turned] = [svd.diagonal, svd.rightSingularVectors];
  const least = sizes.indexOf(Math.min(...sizes));
  if ((sizes[least] as number) < 1e-12 * Math.max(...sizes)) return turned.getColumn(least) as Conic;
  const weighted = turned.mmul(Matrix.diag(sizes)).mmul(turned.transpose());
  const constraint = new Matrix([
    [0, 0, 0, -0.5],
    [0, 1, 0, 0],
    [0, 0, 1, 0],
    [-0.5, 0, 0, 0],
  ]);
  const found = new EVD(weighted.mmul(constraint).mmul(weighted), { assumeSymmetric: true });
  const values = found.realEigenvalues;
  const positive = [...values.keys()].filter((i) => (values[i] as number) > 0);
  const at = positive.reduce((best, i) => ((values[i] as number) < (values[best] as number) ? i : best));
  const back = turned.mmul(Matrix.diag(sizes.map((size) => 1 / size))).mmul(turned.transpose());
  return back.mmul(Matrix.columnVector(found.eigenvectorMatrix.getColumn(at))).to1DArray() as Conic;
}

function taubin(points: readonly Point[]): Conic {
  const squares = points.map(([x, y]) => x * x + y * y);
  const mean = squares.reduce((sum, each) => sum + each / squares.length, 0);
  const by = 2 * Math.sqrt(mean);
  const rows = points.map(([x, y], i) => [((squares[i] as number) - mean) / by, x, y]);
  const svd = new SVD(new Matrix(rows), { autoTranspose: true });
  const least = svd.diagonal.indexOf(Math.min(...svd.diagonal));
  const [a, b, c] = svd.rightSingularVectors.getColumn(least) as [number, number, number];
  return [a / by, b, c, (-mean * a) / by];
}
