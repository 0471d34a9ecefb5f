import { near } from '../chairs/studio.ts';
import type { Out, Scene } from '../render/scene.ts';
import type { Vec } from '../render/vector.ts';
import { box, extrude, fromAbove } from '../solids/extrude.ts';
import type { Point } from '../solids/shapes.ts';
import { noise } from '../woods/noise.ts';
import { plain } from '../woods/wood.ts';
import { cherry } from './plan.ts';

const gap = 0.6;
/** The tail in the top of the leg: an inch and a quarter deep, broader at its end. */
const tail = (wider: number): Point[] => [
  [46 + wider, -31.5 - wider],
  [46 + wider, -15.5 + wider],
  [14.2 - wider, -10 + wider],
  [14.2 - wider, -37 - wider],
];

/** Old dirt that lies in the open ends of the wood. */
function grime([x, y, z]: Vec, out: Out): void {
  const by =
    0.86 + 0.16 * noise(x * 0.11, y * 0.11, z * 0.11, 31) + 0.06 * noise(x * 0.7, y * 0.7, z * 0.7, 32);
  for (let k = 0; k < 3; k++) out[k] = (out[k] as number) * by;
}

/** The top of a front leg from above, the seat out: the rail ends in an open dovetail. */
export function openDovetail(): Scene {
  const leg: Point[] = [
    [0, -46],
    [46, -46],
    [46, -31.5 - gap],
    ...tail(gap).slice(2).toReversed(),
    [46, -15.5 + gap],
    [46, 0],
    [0, 0],
  ];
  const age = [0.74, 0.62, 0.55] as const;
  const legLook = cherry({
    along: 'y',
    board: 12,
    heart: [-34, 30],
    tone: [0.6, 0.5, 0.45],
    over: grime,
    gloss: 0.25,
  });
  const railLook = cherry({
    along: 'x',
    board: 31,
    heart: [-80, -50],
    tone: [0.98, 0.86, 0.8],
    over: grime,
    gloss: 0.25,
  });
  const rail: Point[] = [
    [330, -38],
    [330, -6],
    [46.3, -6],
    [46.3, -15.5],
    ...tail(0).slice(2),
    [46.3, -31.5],
    [46.3, -38],
  ];
  return near(
    [
      ...extrude(leg.map(flip), fromAbove(-240), 240, legLook),
      ...extrude(rail.map(flip), fromAbove(-70), 69.6, railLook),
      ...box([13, -60, 9], [46.3, -2.5, 38], plain([0.012, 0.008, 0.006])),
      ...box([6, -70, -320], [30, -0.6, -0.3], cherry({ along: 'z', board: 33, tone: age, over: grime })),
      ...box([46, -70, -1], [330, -14, 6], cherry({ along: 'x', board: 31, tone: age })),
    ],
    [88, 215, 150],
    [40, -10, 14],
    { fieldDeg: 24, lamp: [-0.78, 0.66, -0.1], behindMm: 230, lampStrength: 1.7 },
  );
}

/** Outlines here are drawn with z downward; the plane from above has −z upward. */
const flip = ([x, z]: Point): Point => [x, z];
