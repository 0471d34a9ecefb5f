import type { Point } from '../picture.ts';
import { leastSquares, type Residuals } from './leastSquares.ts';

/** Measured distances of four corners, taken in turn round the outline. */
export type QuadDistances = {
  /** From the first corner to the second, second to third, third to fourth, fourth to first. */
  sides: readonly [number, number, number, number];
  /** From the first corner to the third, and from the second to the fourth: one of them at least. */
  diagonals: { first?: number; second?: number };
};

/**
 * Where four corners lie in their plane, by the distances between them.
 *
 * The first lies at [0, 0], the second on the x axis, and the outline runs clockwise with y down. With both diagonals there is
 * one length more than needed: all are fitted by least squares, and how far they disagree is handed back.
 *
 * @returns undefined where the lengths can't close: a side longer than the way round
 * @source plane trigonometry
 */
export function quadFromDistances({
  sides,
  diagonals,
}: QuadDistances): { corners: [Point, Point, Point, Point]; misfit: number } | undefined {
  const [ab, bc, cd, da] = sides;
  const { first: ac, second: bd } = diagonals;
  const start = ac !== undefined ? byFirst(ab, bc, cd, da, ac) : bySecond(ab, bc, cd, da, bd as number);
  if (start === undefined) return undefined;
  if (ac === undefined || bd === undefined) return { corners: start, misfit: 0 };
  const scale = Math.max(...sides);
  const wanted = [ab, bc, cd, da, ac, bd].map((length) => length / scale);
  const [, [bx], [cx, cy], [dx, dy]] = start;
  const fit = leastSquares(
    [bx, cx, cy, dx, dy].map((value) => value / scale),
    (at) => sixLengths(at, wanted),
  );
  if (fit === undefined) return undefined;
  const [x1, x2, y2, x3, y3] = fit.parameters.map((value) => value * scale) as [
    number,
    number,
    number,
    number,
    number,
  ];
  return {
    corners: [
      [0, 0],
      [x1, 0],
      [x2, y2],
      [x3, y3],
    ],
    misfit: Math.sqrt(fit.squares) * scale,
  };
}

type Four = [Point, Point, Point, Point];

function byFirst(ab: number, bc: number, cd: number, da: number, ac: number): Four | undefined {
  const atA = angleBetween(ab, ac, bc);
  const beyond = angleBetween(ac, da, cd);
  if (atA === undefined || beyond === undefined) return undefined;
  return [
    [0, 0],
    [ab, 0],
    [ac * Math.cos(atA), ac * Math.sin(atA)],
    [da * Math.cos(atA + beyond), da * Math.sin(atA + beyond)],
  ];
}

function bySecond(ab: number, bc: number, cd: number, da: number, bd: number): Four | undefined {
  const atA = angleBetween(ab, da, bd);
  const atB = angleBetween(ab, bd, da);
  const beyond = angleBetween(bd, bc, cd);
  if (atA === undefined || atB === undefined || beyond === undefined) return undefined;
  return [
    [0, 0],
    [ab, 0],
    [ab - bc * Math.cos(atB + beyond), bc * Math.sin(atB + beyond)],
    [da * Math.cos(atA), da * Math.sin(atA)],
  ];
}

/** The angle between two sides of a triangle whose third side lies opposite. */
function angleBetween(one: number, other: number, opposite: number): number | undefined {
  const cosine = (one * one + other * other - opposite * opposite) / (2 * one * other);
  return Math.abs(cosine) < 1 ? Math.acos(cosine) : undefined;
}

function sixLengths(at: readonly number[], wanted: readonly number[]): Residuals | undefined {
  const [bx, cx, cy, dx, dy] = at as [number, number, number, number, number];
  const corners: Point[] = [
    [0, 0],
    [bx, 0],
    [cx, cy],
    [dx, dy],
  ];
  const slots = [
    [-1, -1],
    [0, -1],
    [1, 2],
    [3, 4],
  ];
  const lines = [
    [0, 1],
    [1, 2],
    [2, 3],
    [3, 0],
    [0, 2],
    [1, 3],
  ] as const;
  const values: number[] = [];
  const jacobian: number[][] = [];
  for (const [n, [i, j]] of lines.entries()) {
    const [p, q] = [corners[i] as Point, corners[j] as Point];
    const [x, y] = [q[0] - p[0], q[1] - p[1]];
    const length = Math.hypot(x, y);
    if (!(length > 0)) return undefined;
    values.push(length - (wanted[n] as number));
    const row = new Array<number>(5).fill(0);
    const put = (slot: number, value: number) => {
      if (slot >= 0) row[slot] = value;
    };
    put(slots[i]?.[0] as number, -x / length);
    put(slots[i]?.[1] as number, -y / length);
    put(slots[j]?.[0] as number, x / length);
    put(slots[j]?.[1] as number, y / length);
    jacobian.push(row);
  }
  return { values, jacobian };
}
