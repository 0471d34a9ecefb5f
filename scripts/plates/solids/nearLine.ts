import type { Point } from './shapes.ts';

/** How far a point lies from a line of straight pieces with square ends, mm. */
export function nearLine(line: readonly Point[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < line.length; i++) {
    const [ax, ay] = line[i] as Point;
    const [bx, by] = line[i + 1] as Point;
    const [dx, dy] = [bx - ax, by - ay];
    const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
    const share = Math.max(0, Math.min(1, along));
    const beyond = (i === 0 && along < 0) || (i + 2 === line.length && along > 1);
    const far = Math.hypot(x - ax - share * dx, y - ay - share * dy);
    least = Math.min(least, beyond ? far * 3 + 2 : far);
  }
  return least;
}
