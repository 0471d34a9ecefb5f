import { near } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { baked } from '../solids/baked.ts';
import { extrude, fromFront } from '../solids/extrude.ts';
import { type Point, smoothLine } from '../solids/shapes.ts';
import { noise } from '../woods/noise.ts';
import { mahogany } from './plan.ts';

/** A leaf's lobes: where each starts, which way it runs, how long and how broad, mm. The other half mirrors them. */
const lobes = [
  [0, -14, 90, 58, 13],
  [4, -10, 58, 48, 11],
  [6, -12, 28, 54, 11],
  [6, -18, 2, 60, 10],
  [5, -22, -24, 44, 9],
] as const;

/** Height of the leaf above its ground, mm: lobes with a hollow down each, rounded over by sandpaper. */
function leaf(x: number, y: number): number {
  const side = Math.abs(x);
  let high = 0;
  for (const [x0, y0, degrees, long, broad] of lobes) {
    const turn = (degrees * Math.PI) / 180;
    const a = ((side - x0) * Math.cos(turn) + (y - y0) * Math.sin(turn)) / long;
    const curl = 7 * a * a;
    const b = -(side - x0) * Math.sin(turn) + (y - y0) * Math.cos(turn) - curl * (degrees > 80 ? 0 : 1);
    if (a < 0 || a > 1) continue;
    const half = broad * Math.sin(Math.PI * Math.min(1, 0.12 + a * 0.88)) ** 0.6;
    const across = b / half;
    if (Math.abs(across) >= 1) continue;
    const edge = (1 - across * across) ** 0.7;
    const vein = Math.exp(-((across / 0.3) ** 2)) * 0.42 * (1 - a * 0.5);
    high = Math.max(high, 4.2 * edge * (1 - 0.35 * a) - 4.2 * vein);
  }
  const boss = 1 - (side / 9) ** 2 - ((y + 19) / 11) ** 2;
  return boss > 0 ? Math.max(high, 5.4 * boss ** 0.6) : high;
}

function carved(leafAt: typeof leaf, x: number, y: number, z: number): number {
  const scratches = 0.012 * noise(x * 0.05 + y * 0.02, y * 3.2 - x * 0.6, z, 5);
  return z > 20 ? leafAt(x, y) + scratches : 0;
}

const top: Point[] = smoothLine(
  [
    [230, 40],
    [170, 16],
    [100, 22],
    [50, 42],
    [0, 50],
    [-50, 42],
    [-100, 22],
    [-170, 16],
    [-230, 40],
  ],
  12,
);
const under: Point[] = smoothLine(
  [
    [-230, -34],
    [-120, -40],
    [0, -44],
    [120, -40],
    [230, -34],
  ],
  12,
);

/** The middle of the crest rail: a leaf whose hollows and ridges were sanded round. */
export function carving(): Scene {
  const leafAt = baked(leaf, [-80, -50], [80, 60], 0.2);
  const face = mahogany({
    along: 'x',
    board: 52,
    heart: [-90, -60],
    gloss: 0.45,
    relief: (x, y, z) => carved(leafAt, x, y, z),
    reliefStepMm: 0.5,
    over([x, y, z], out) {
      if (z < 20) return;
      const high = leafAt(x, y);
      const by = 0.72 + 0.085 * Math.min(4.2, high);
      for (let k = 0; k < 3; k++) out[k] = (out[k] as number) * by;
    },
  });
  return near(extrude([...top, ...under].toReversed(), fromFront(0), 24, face), [-46, 62, 285], [0, 2, 22], {
    fieldDeg: 25,
    lamp: [-0.85, 0.45, 0.32],
    lampStrength: 2,
    roomStrength: 0.42,
  });
}
