import { fillLoops } from './fillLoops.ts';
import type { Face } from './scene.ts';
import { cross, dot, unit, type Vec } from './vector.ts';

/** How much of the lamp reaches a place, 0 none to 1 all; and how far off its surface to ask, mm. */
export type LampReach = { at: (x: number, y: number, z: number) => number; offMm: number };

const size = 1400;
const spread = 2;
/** The corners of the patch that is asked, and its middle. */
const corners = [
  0,
  -spread * size - spread,
  -spread * size + spread,
  spread * size - spread,
  spread * size + spread,
];

/** Sees the faces from the lamp, so that a place can be asked whether anything stands between. */
export function shadowMap(faces: readonly Face[], toLamp: Vec): LampReach {
  const w = unit(toLamp);
  const u = unit(cross(Math.abs(w[1]) > 0.9 ? [1, 0, 0] : [0, 1, 0], w));
  const v = cross(w, u);
  const casting = faces.filter((face) => !face.castsNone);
  const [u0, v0, step] = frameOf(casting, u, v);
  const height = new Float32Array(size * size).fill(-1e9);
  for (const face of casting) {
    const lean = dot(face.normal, w);
    if (Math.abs(lean) < 1e-4) continue;
    const place = face.loops[0]?.[0] as Vec;
    const whole = dot(face.normal, place);
    const a = (-dot(face.normal, u) / lean) * step;
    const b = (-dot(face.normal, v) / lean) * step;
    const c = (whole - dot(face.normal, u) * u0 - dot(face.normal, v) * v0) / lean;
    const loops = face.loops.map((loop) =>
      loop.flatMap((one) => [(dot(one, u) - u0) / step, (dot(one, v) - v0) / step]),
    );
    fillLoops(loops, size, size, (row, from, to) => {
      for (let x = from; x <= to; x++) {
        const high = a * (x + 0.5) + b * (row + 0.5) + c;
        const at = row * size + x;
        if (high > (height[at] as number)) height[at] = high;
      }
    });
  }
  const slack = step * 2.6;
  const [wx, wy, wz] = w;
  const [ux, uy, uz] = u;
  const [vx, vy, vz] = v;
  const at = (x: number, y: number, z: number) => {
    const column = Math.floor((x * ux + y * uy + z * uz - u0) / step);
    const row = Math.floor((x * vx + y * vy + z * vz - v0) / step);
    if (column < spread || row < spread || column >= size - spread || row >= size - spread) return 1;
    const mine = x * wx + y * wy + z * wz + slack;
    const middle = row * size + column;
    const clear = corners.reduce((sum, by) => sum + ((height[middle + by] as number) <= mine ? 1 : 0), 0);
    if (clear === 0 || clear === corners.length) return clear / corners.length;
    let open = 0;
    for (let j = -spread; j <= spread; j++)
      for (let i = -spread; i <= spread; i++)
        if ((height[(row + j) * size + column + i] as number) <= mine) open++;
    return open / (2 * spread + 1) ** 2;
  };
  return { at, offMm: 0.15 + step * 2.2 };
}

/** Where the map begins, and how many millimetres one of its cells covers. */
function frameOf(faces: readonly Face[], u: Vec, v: Vec): [number, number, number] {
  let [u0, u1, v0, v1] = [1e9, -1e9, 1e9, -1e9];
  for (const face of faces)
    for (const place of face.loops.flat()) {
      const [a, b] = [dot(place, u), dot(place, v)];
      u0 = Math.min(u0, a);
      u1 = Math.max(u1, a);
      v0 = Math.min(v0, b);
      v1 = Math.max(v1, b);
    }
  const step = (Math.max(u1 - u0, v1 - v0) * 1.02) / (size - 8);
  return [u0 - 4 * step, v0 - 4 * step, step];
}
