import type { Face } from '../render/scene.ts';
import { cross, minus, unit, type Vec } from '../render/vector.ts';
import type { ChairPlan } from './chair.ts';

const cells = 28;

/** The covered slip seat: a low pillow inside the rails. */
export function cushion({ frontMm, backMm, depthMm, seatHeightMm, seat }: ChairPlan): Face[] {
  const place = (i: number, j: number): Vec => {
    const s = (i / cells) * 2 - 1;
    const t = j / cells;
    const half = (frontMm / 2 - 14) * (1 - t) + (backMm / 2 - 12) * t;
    const rise = ((1 - Math.abs(s) ** 5) * (1 - Math.abs(2 * t - 1) ** 5)) ** 0.6;
    return [s * half, seatHeightMm - 6 + 33 * rise, -10 - t * (depthMm - 50)];
  };
  const slope = (i: number, j: number): Vec =>
    unit(cross(minus(place(i + 0.5, j), place(i - 0.5, j)), minus(place(i, j + 0.5), place(i, j - 0.5))));
  return Array.from({ length: cells * cells }, (_, k) => [k % cells, Math.floor(k / cells)] as const).flatMap(
    ([i, j]) => {
      const [a, b, c, d] = [place(i, j), place(i + 1, j), place(i + 1, j + 1), place(i, j + 1)];
      const middle = slope(i + 0.5, j + 0.5);
      return [
        [a, b, c],
        [a, c, d],
      ].map((corners): Face => {
        const [p, q, r] = corners as [Vec, Vec, Vec];
        return {
          loops: [[p, q, r]],
          normal: unit(cross(minus(q, p), minus(r, p))),
          look: seat,
          normalAt: (_x, _y, _z, out) => out.set(middle),
        };
      });
    },
  );
}
