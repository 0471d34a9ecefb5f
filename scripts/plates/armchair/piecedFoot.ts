import { lit, sweep } from '../chairs/studio.ts';
import type { Face, Scene } from '../render/scene.ts';
import { extrude, fromRight } from '../solids/extrude.ts';
import type { Point } from '../solids/shapes.ts';
import { shift, turn } from '../solids/turn.ts';
import { noise } from '../woods/noise.ts';
import { cherry } from './plan.ts';

const old = cherry({
  along: 'y',
  board: 23,
  heart: [70, -40],
  tone: [0.74, 0.66, 0.62],
  over([x, y, z], out) {
    const by = 0.75 + 0.25 * Math.min(1, Math.max(0, (y + 6 * noise(x * 0.1, 0, z * 0.1, 3)) / 26));
    for (let k = 0; k < 3; k++) out[k] = (out[k] as number) * by;
  },
});

/** The leg above the scarf, seen from its side: −z to the right, y up. */
const above: Point[] = [
  [0, 46.4],
  [36, 30.4],
  [31, 330],
  [-5, 330],
];
const pieced: Point[] = [
  [0.2, 0],
  [36.2, 0],
  [36.2, 30],
  [0.2, 46],
];
const wornFoot: Point[] = [
  [0, 1.5],
  [3, 0],
  [22, 0],
  [36, 10],
  [31, 330],
  [-5, 330],
];

/** Laid out for the right and printed mirrored: the rear feet from outside and behind: the left one pieced an inch and a half up, its fellow worn to a slope. */
export function piecedFoot(): Scene {
  const piece = cherry({ along: 'y', board: 87, heart: [-80, 60], tone: [0.86, 0.68, 0.62], gloss: 0.4 });
  const foot: Face[] = [
    ...extrude(above, fromRight(0), 36, old),
    ...extrude(pieced, fromRight(0.3), 35.8, piece),
  ];
  const fellow = shift(extrude(wornFoot, fromRight(0), 36, old), [150, 0, 10]);
  return lit([...turn(sweep(700, 700), 'y', -120), ...foot, ...fellow], [-250, 88, -190], [44, 46, -16], {
    fieldDeg: 27,
    lamp: [-0.8, 0.6, -0.62],
    nearnessMm: 12,
  });
}
