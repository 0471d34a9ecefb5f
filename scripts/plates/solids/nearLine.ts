import type { Point } from './shapes.ts';

/** How far a point lies from a line of straight pieces, mm. */
export function nearLine(line: readonly Point[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < line.length; i++) {
    const [ax, ay] = line[i] as Point;
    const [bx, by] = line[i + 1] as Point;
    const [dx, dy] = [bx - ax, by - ay];
    const share = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(x - ax - share * dx, y - ay - share * dy));
  }
  return least;
}
