import type { Point } from './shapes.ts';

/**
 * Works out a function of a place once on a grid, and reads it between the grid's points from then on. Outside the
 * grid it gives the value at its nearest edge.
 */
export function baked(
  from: (x: number, y: number) => number,
  low: Point,
  high: Point,
  step: number,
): (x: number, y: number) => number {
  const across = Math.ceil((high[0] - low[0]) / step) + 1;
  const rows = Math.ceil((high[1] - low[1]) / step) + 1;
  const grid = new Float32Array(across * rows);
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < across; i++) grid[j * across + i] = from(low[0] + i * step, low[1] + j * step);
  return (x, y) => {
    const gx = Math.max(0, Math.min(across - 1.001, (x - low[0]) / step));
    const gy = Math.max(0, Math.min(rows - 1.001, (y - low[1]) / step));
    const [i, j] = [Math.floor(gx), Math.floor(gy)];
    const [u, v] = [gx - i, gy - j];
    const at = j * across + i;
    const below = (grid[at] as number) * (1 - u) + (grid[at + 1] as number) * u;
    const above = (grid[at + across] as number) * (1 - u) + (grid[at + across + 1] as number) * u;
    return below * (1 - v) + above * v;
  };
}
