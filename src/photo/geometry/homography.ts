import { Matrix, SVD } from 'ml-matrix';
import type { Point } from '../picture.ts';
import { type Frame, frameOf, intoFrame } from './frame.ts';

/** A map between two planes seen in perspective: [x, y, 1] times it gives [w·X, w·Y, w]. */
export type Homography = readonly [Row, Row, Row];
type Row = readonly [number, number, number];

/** Where a homography takes a point, and the w it was divided by: its sign tells this side of the horizon from the other. */
export function mapped(h: Homography, [x, y]: Point): { point: Point; w: number } {
  const [u, v, w] = h.map((row) => row[0] * x + row[1] * y + row[2]) as [number, number, number];
  return { point: [u / w, v / w], w };
}

/** The homography the other way, its last number 1 where it can be. */
export function inverse(h: Homography): Homography {
  const [[a, b, c], [d, e, f], [g, i, j]] = h;
  return scaledToOne([
    [e * j - f * i, c * i - b * j, b * f - c * e],
    [f * g - d * j, a * j - c * g, c * d - a * f],
    [d * i - e * g, b * g - a * i, a * e - b * d],
  ]);
}

/** The product: first `first`, then `then`. */
export function chained(first: Homography, then: Homography): Homography {
  return then.map((row) =>
    [0, 1, 2].map((j) => row.reduce((sum, value, k) => sum + value * ((first[k] as Row)[j] as number), 0)),
  ) as unknown as Homography;
}

/** The same map with its last number 1; where that is next to nothing, with squares that add up to 1. */
export function scaledToOne(h: Homography): Homography {
  const size = Math.hypot(...h.flat());
  const last = h[2][2];
  const by = Math.abs(last) > 1e-12 * size ? last : size;
  return h.map((row) => row.map((value) => value / by)) as unknown as Homography;
}

/** The frame as a homography, and the way back. */
export function frameMatrix({ centre: [x, y], scale }: Frame): Homography {
  return [
    [scale, 0, -scale * x],
    [0, scale, -scale * y],
    [0, 0, 1],
  ];
}

/**
 * The homography that takes `from` to `to`, by least squares of the algebraic error in normalised coordinates (the direct
 * linear transformation), and how well it is fixed: the ratio of its second-smallest singular value to the largest, next to
 * nothing where the points leave it open.
 *
 * @param from  Point[n], n ≥ 4
 * @source Hartley and Zisserman, Multiple View Geometry (2nd ed., 2003), algorithm 4.2; from memory
 */
export function directHomography(
  from: readonly Point[],
  to: readonly Point[],
): { homography: Homography; firmness: number } {
  const [frameFrom, frameTo] = [frameOf(from), frameOf(to)];
  const rows = from.flatMap((point, i) => {
    const [x, y] = intoFrame(frameFrom, point);
    const [u, v] = intoFrame(frameTo, to[i] as Point);
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, -v],
    ];
  });
  // Nine rows at least, so that the null vector is among the right singular vectors.
  while (rows.length < 9) rows.push(new Array<number>(9).fill(0));
  const svd = new SVD(new Matrix(rows), { autoTranspose: true });
  const order = [...svd.diagonal.keys()].sort(
    (a, b) => (svd.diagonal[b] as number) - (svd.diagonal[a] as number),
  );
  const h = svd.rightSingularVectors.getColumn(order[8] as number);
  const inFrames = [h.slice(0, 3), h.slice(3, 6), h.slice(6, 9)] as unknown as Homography;
  const back = { centre: [0, 0] as Point, scale: 1 / frameTo.scale };
  const toWorld = chained(frameMatrix(back), [
    [1, 0, frameTo.centre[0]],
    [0, 1, frameTo.centre[1]],
    [0, 0, 1],
  ]);
  return {
    homography: scaledToOne(chained(chained(frameMatrix(frameFrom), inFrames), toWorld)),
    firmness: (svd.diagonal[order[7] as number] as number) / (svd.diagonal[order[0] as number] as number),
  };
}
