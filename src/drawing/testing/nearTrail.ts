import type { Point, Trail } from './followPath.ts';

/** Whether a point lies within a closed stretch, by the crossings of a line from it (even-odd). */
export function isWithin({ points, closed }: Trail, [x, y]: Point): boolean {
  if (!closed) return false;
  let within = false;
  points.forEach(([toX, toY], index) => {
    const [fromX, fromY] = points.at(index - 1) ?? [toX, toY];
    if (toY > y !== fromY > y && x < fromX + ((toX - fromX) * (y - fromY)) / (toY - fromY)) within = !within;
  });
  return within;
}

/** How far a point lies from the nearest place of a stretch. */
export function distanceTo({ points, closed }: Trail, [x, y]: Point): number {
  const sides = closed ? points.map((to, index) => [points.at(index - 1) ?? to, to] as const) : pairs(points);
  return Math.min(
    ...sides.map(([[fromX, fromY], [toX, toY]]) => {
      const [alongX, alongY] = [toX - fromX, toY - fromY];
      const long = alongX ** 2 + alongY ** 2;
      const share = long === 0 ? 0 : ((x - fromX) * alongX + (y - fromY) * alongY) / long;
      const at = Math.min(1, Math.max(0, share));
      return Math.hypot(x - fromX - alongX * at, y - fromY - alongY * at);
    }),
  );
}

function pairs(points: readonly Point[]): (readonly [Point, Point])[] {
  return points.slice(1).map((to, index) => [points[index] ?? to, to] as const);
}
