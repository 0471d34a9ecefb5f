import { near } from '../chairs/studio.ts';
import type { Out, Scene } from '../render/scene.ts';
import type { Vec } from '../render/vector.ts';
import { box } from '../solids/extrude.ts';
import { shift, turn } from '../solids/turn.ts';
import { noise } from '../woods/noise.ts';
import { plain, wood } from '../woods/wood.ts';
import { cherry } from './plan.ts';

/** Depth of two strokes of a narrow chisel at a place: flat-ended cuts with one steep and one sloping side, mm. */
function strokes(x: number, y: number): number {
  return Math.max(stroke(x + 5.2, y, 0.06), stroke(x - 5.4, y, -0.03));
}

function stroke(x: number, y: number, lean: number): number {
  const across = x - y * lean;
  if (Math.abs(y) > 9.2 || across < -1.25 || across > 1.9) return 0;
  const side = across < 0 ? 1 + across / 1.25 : 1 - across / 1.9;
  return 1.35 * side * Math.min(1, (9.2 - Math.abs(y)) / 1.4);
}

const darkened = (top: (p: Vec) => number) => (place: Vec, out: Out) => {
  const by = 1 - 0.66 * Math.min(1, top(place) * 1.1);
  const cloud = 0.93 + 0.1 * noise(place[0] * 0.06, place[1] * 0.06, place[2] * 0.06, 41);
  for (let k = 0; k < 3; k++) out[k] = (out[k] as number) * by * cloud;
};

/** The rebate of the front rail and, behind it, the seat frame lifted out: the same numeral on both. */
export function numerals(): Scene {
  const onRail = (x: number, y: number, z: number) => (y > -0.2 ? strokes(x - 4, z + 11) : 0);
  const onFrame = (x: number, _y: number, z: number) => strokes((x + 3) * 1.04, z - 1);
  const rail = cherry({
    along: 'x',
    board: 31,
    heart: [-90, 70],
    tone: [1, 0.9, 0.84],
    gloss: 0.2,
    relief: (x, y, z) => -onRail(x, y, z),
    reliefStepMm: 0.12,
    over: darkened(([x, y, z]) => onRail(x, y, z)),
  });
  const frame = wood('pine', {
    along: 'x',
    board: 4,
    heart: [-50, 30],
    tone: [0.82, 0.72, 0.6],
    gloss: 0.12,
    relief: (x, y, z) => -onFrame(x, y, z) + 0.04 * noise(x * 0.03, y, z * 0.8, 6),
    reliefStepMm: 0.12,
    over: darkened(([x, y, z]) => onFrame(x, y, z)),
  });
  return near(
    [
      ...box([-900, -80, -900], [900, -66, 900], plain([0.16, 0.155, 0.15])).map((face) => ({
        ...face,
        castsNone: true,
      })),
      ...box([-220, -66, -24], [220, 0, 0], rail),
      ...box([-220, -66, 0], [220, 9, 9], cherry({ along: 'x', board: 35, heart: [-40, 70] })),
      ...shift(turn(box([-230, -20, -27], [240, 0, 27], frame), 'y', -7), [2, 2, -78]),
    ],
    [-10, 178, 132],
    [0, -6, -44],
    { fieldDeg: 19, lamp: [-0.86, 0.42, 0.22], lampStrength: 2, roomStrength: 0.42 },
  );
}
