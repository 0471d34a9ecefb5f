/** A point of an outline in its own plane, mm. */
export type Point = readonly [number, number];

/** A smooth closed curve through points (Catmull–Rom), as many straight steps between each two. */
export function smoothLoop(points: readonly Point[], steps = 10): Point[] {
  const many = points.length;
  return points.flatMap((_, i) =>
    between(
      [i - 1, i, i + 1, i + 2].map((j) => points[(j + many) % many] as Point),
      steps,
    ),
  );
}

/** A smooth open curve through points, its ends included. */
export function smoothLine(points: readonly Point[], steps = 10): Point[] {
  const last = points.length - 1;
  const at = (j: number) => points[Math.max(0, Math.min(last, j))] as Point;
  const curve = points
    .slice(0, -1)
    .flatMap((_, i) => between([at(i - 1), at(i), at(i + 1), at(i + 2)], steps));
  return [...curve, at(last)];
}

function between(four: Point[], steps: number): Point[] {
  const [p, q, r, s] = four as [Point, Point, Point, Point];
  return Array.from({ length: steps }, (_, i) => {
    const t = i / steps;
    const at = (k: 0 | 1) =>
      0.5 *
      (2 * q[k] +
        (r[k] - p[k]) * t +
        (2 * p[k] - 5 * q[k] + 4 * r[k] - s[k]) * t * t +
        (3 * q[k] - p[k] - 3 * r[k] + s[k]) * t * t * t);
    return [at(0), at(1)];
  });
}

/** Part of a circle, anticlockwise from one angle to another, degrees. */
export function arc(centre: Point, radius: number, from: number, to: number, steps = 24): Point[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const turn = ((from + ((to - from) * i) / steps) * Math.PI) / 180;
    return [centre[0] + radius * Math.cos(turn), centre[1] + radius * Math.sin(turn)];
  });
}

export const circle = (centre: Point, radius: number, steps = 32): Point[] =>
  arc(centre, radius, 0, 360, steps).slice(1);

export const mirrored = (points: readonly Point[]): Point[] =>
  points.map(([x, y]): Point => [-x, y]).toReversed();

export const rectangle = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

/** Twice the area, above 0 when the outline runs anticlockwise. */
export function winding(points: readonly Point[]): number {
  return points.reduce((sum, [x0, y0], i) => {
    const [x1, y1] = points[(i + 1) % points.length] as Point;
    return sum + x0 * y1 - x1 * y0;
  }, 0);
}
