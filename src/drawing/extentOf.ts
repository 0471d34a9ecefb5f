import type { Point, Run } from './outline.ts';

/** An upright box: left, top, width, height in mm, y down. */
export type Box = [number, number, number, number];

/**
 * The smallest upright box around runs, their curves included exactly.
 *
 * Method: the ends of every curve and the places where it turns back in x or y, the roots of its derivative.
 *
 * @returns [0, 0, 0, 0] for no runs
 * @accuracy rounding only
 */
export function extentOf(runs: readonly Run[]): Box {
  const xs = runs.flatMap((run) => reachOf(run, 0));
  const ys = runs.flatMap((run) => reachOf(run, 1));
  if (xs.length === 0) return [0, 0, 0, 0];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return [left, top, Math.max(...xs) - left, Math.max(...ys) - top];
}

function reachOf(run: Run, axis: 0 | 1): number[] {
  const reach = [run.start[axis]];
  let from: Point = run.start;
  for (const [first, second, end] of run.curves) {
    const [p0, p1, p2, p3] = [from[axis], first[axis], second[axis], end[axis]];
    for (const t of turnsOf(p0, p1, p2, p3)) {
      const s = 1 - t;
      if (t > 0 && t < 1) reach.push(s ** 3 * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t ** 3 * p3);
    }
    reach.push(p3);
    from = end;
  }
  return reach;
}

/** Where the derivative of a cubic with these control values is nought. */
function turnsOf(p0: number, p1: number, p2: number, p3: number): number[] {
  const a = p3 - 3 * p2 + 3 * p1 - p0;
  const b = 2 * (p2 - 2 * p1 + p0);
  const c = p1 - p0;
  if (Math.abs(a) < 1e-9) return b === 0 ? [] : [-c / b];
  const root = Math.sqrt(b * b - 4 * a * c);
  return [(-b + root) / (2 * a), (-b - root) / (2 * a)];
}
