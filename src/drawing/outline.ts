/** A place in a view, in millimetres. */
export type Point = readonly [number, number];

/** A curve from where the last one ended: two control points and its end. A straight line is a curve too. */
export type Curve = readonly [Point, Point, Point];

/** One run of curves. An incised line has no inside; a closed run ends where it began. */
export type Run = {
  readonly start: Point;
  readonly curves: readonly Curve[];
  readonly closed: boolean;
  readonly incised: boolean;
};

/** The straight line to a point, as a curve. */
export function lineTo(from: Point, to: Point): Curve {
  return [between(from, to, 1 / 3), between(from, to, 2 / 3), to];
}

/** The point a share of the way from one to another. */
export function between(a: Point, b: Point, share: number): Point {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** Where a run ends. */
export function endOf(run: Run): Point {
  return run.curves.at(-1)?.[2] ?? run.start;
}

/** The same run walked the other way. */
export function reversed(run: Run): Run {
  const ends = [run.start, ...run.curves.map((curve) => curve[2])];
  const curves = run.curves.map(([first, second], index): Curve => [second, first, ends[index] as Point]);
  return { ...run, start: endOf(run), curves: curves.toReversed() };
}

/** The same run with every point moved. */
export function moved(run: Run, move: (point: Point) => Point): Run {
  return {
    ...run,
    start: move(run.start),
    curves: run.curves.map(([first, second, end]): Curve => [move(first), move(second), move(end)]),
  };
}

/** The run as corners of a polygon, each curve in `steps` straight pieces. */
export function flattened(run: Run, steps = 12): Point[] {
  const points: Point[] = [run.start];
  let from = run.start;
  for (const curve of run.curves) {
    for (let step = 1; step <= steps; step++) points.push(onCurve(from, curve, step / steps));
    from = curve[2];
  }
  return points;
}

function onCurve(from: Point, [first, second, end]: Curve, t: number): Point {
  const s = 1 - t;
  const mix = (axis: 0 | 1) =>
    s * s * s * from[axis] +
    3 * s * s * t * first[axis] +
    3 * s * t * t * second[axis] +
    t * t * t * end[axis];
  return [mix(0), mix(1)];
}

/** Twice the area inside a polygon, positive when its corners run from the x axis toward the y axis. */
export function doubleArea(polygon: readonly Point[]): number {
  return polygon.reduce((area, [x, y], index) => {
    const [nextX, nextY] = polygon[(index + 1) % polygon.length] as Point;
    return area + x * nextY - nextX * y;
  }, 0);
}

/** Whether a point lies inside a polygon (counting crossings of a line to the right). */
export function isInside([x, y]: Point, polygon: readonly Point[]): boolean {
  let inside = false;
  let from = polygon.at(-1);
  for (const to of polygon) {
    if (from !== undefined && from[1] > y !== to[1] > y) {
      if (x < from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0])) inside = !inside;
    }
    from = to;
  }
  return inside;
}
