import { near } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { baked } from '../solids/baked.ts';
import { box } from '../solids/extrude.ts';
import { nearLine } from '../solids/nearLine.ts';
import { arc, type Point } from '../solids/shapes.ts';
import { noise } from '../woods/noise.ts';
import { wood } from '../woods/wood.ts';
import { mahogany } from './plan.ts';

const strokeMm = 3.1;
/** The strokes of a cut stencil, with the bridges that hold its islands: "412". */
const strokes: Point[][] = [
  [
    [-36, 17],
    [-48, -5],
  ],
  [
    [-50, -9],
    [-38, -9],
  ],
  [
    [-31, 18],
    [-31, -19],
  ],
  [
    [-26, -9],
    [-21, -9],
  ],
  [
    [-8, 8],
    [-4.5, 13],
  ],
  [
    [0, 18],
    [0, -19],
  ],
  arc([35, 8], 10, 165, 60, 12),
  [...arc([35, 8], 10, 35, -40, 10), [35, -8]],
  [
    [33, -10.5],
    [28, -15],
  ],
  [
    [25, -19],
    [47, -19],
  ],
];

/** The inside of the back rail: birch, stained with a brush, a number stencilled in purple. */
export function stencil(): Scene {
  const distance = baked(
    (x, y) => Math.min(...strokes.map((line) => nearLine(line, x, y))),
    [-75, -42],
    [75, 42],
    0.2,
  );
  const board = wood('birch', {
    along: 'x',
    board: 32,
    heart: [-60, 200],
    gloss: 0.22,
    over([x, y, z], out) {
      const lap = noise(x * 0.006, y * 0.11, 2, 12) + 0.6 * noise(x * 0.004, y * 0.5, 5, 13);
      const stain = 0.75 + 0.2 * (lap > 0.1 ? 1 : lap > -0.1 ? 0.5 + lap * 5 : 0) + 0.08 * lap;
      out[0] = (out[0] as number) * (1 - 0.55 * stain);
      out[1] = (out[1] as number) * (1 - 0.74 * stain);
      out[2] = (out[2] as number) * (1 - 0.74 * stain);
      if (z < -1) return;
      const far = distance(x, y - 2);
      const rough = 0.35 * noise(x * 1.4, y * 1.4, 0, 14);
      const body = Math.max(0, Math.min(1, (strokeMm - far + rough) * 1.6));
      const mist =
        0.16 * Math.exp(-Math.max(0, far - strokeMm) / 2.2) * (0.5 + 0.5 * noise(x * 2.6, y * 2.6, 0, 15));
      const ink = Math.max(body * (0.86 + 0.12 * noise(x * 0.25, y * 2.2, 0, 16)), mist);
      const purple = [0.055, 0.018, 0.11];
      for (let k = 0; k < 3; k++) out[k] = (out[k] as number) * (1 - ink) + (purple[k] as number) * ink;
    },
  });
  return near(
    [
      ...box([-300, -38, -28], [300, 38, 0], board),
      ...box([-160, -37, 0], [-124, 200, 14], mahogany({ along: 'y', board: 5 })),
      ...box([-400, 38, -40], [300, 62, 22], mahogany({ along: 'x', board: 6 })),
    ],
    [-60, -62, 275],
    [-8, 4, 0],
    { fieldDeg: 25, lamp: [-0.8, -0.25, 0.62], behindMm: 150 },
  );
}
