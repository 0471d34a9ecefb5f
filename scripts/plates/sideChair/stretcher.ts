import { near } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { box } from '../solids/extrude.ts';
import { lathe } from '../solids/lathe.ts';
import { turn } from '../solids/turn.ts';
import { plain, wood } from '../woods/wood.ts';
import { mahogany } from './plan.ts';

const dowel = wood('birch', { along: 'y', tone: [1.1, 1.05, 0.95], gloss: 0.1 });

/** Laid out for the right and printed mirrored: the left rear leg from outside: the stretcher in the middle of it, its shoulder open on two round pins. */
export function stretcher(): Scene {
  const pins = [-8, 8].flatMap((y) =>
    turn(
      lathe(
        [
          [0, 0],
          [4.3, 0],
          [4.3, 8],
          [0, 8],
        ],
        dowel,
      ),
      'x',
      90,
    ).map((face) => ({
      ...face,
      loops: face.loops.map((loop) => loop.map(([a, b, c]) => [a + 18, b + y, c - 1] as const)),
    })),
  );
  return near(
    [
      ...box([0, -260, -36], [36, 260, 0], mahogany({ along: 'y', board: 4, heart: [60, -80] })),
      ...box([9.5, -16, 3.4], [26.5, 16, 420], mahogany({ along: 'z', board: 9, heart: [-60, -40] })),
      ...box([16, -13, -4], [20, 13, 0.01], plain([0.03, 0.015, 0.01])),
      ...pins,
    ],
    [-250, 92, 78],
    [8, -2, 12],
    { fieldDeg: 23, lamp: [-0.8, 0.62, 0.3] },
  );
}
