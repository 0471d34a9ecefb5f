import { near } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { box, extrude, fromAbove } from '../solids/extrude.ts';
import type { Point } from '../solids/shapes.ts';
import { plain } from '../woods/wood.ts';
import { cherry } from './plan.ts';

const gap = 0.5;
/** The half dovetail seen from below: one cheek straight, the other spreading. Across x, along z downward. */
const tail = (wider: number): Point[] => [
  [0, 8 + wider],
  [-15 - wider, 8 + wider],
  [-15 - wider, -12 - wider],
  [0, -5 - wider],
];

/** The stretchers, the chair upside down: the cross stretcher let into the side one from below. */
export function medialStretcher(): Scene {
  const tone = [0.78, 0.68, 0.62] as const;
  const side: Point[] = [[-22, -300], [0, -300], ...tail(gap).toReversed(), [0, 300], [-22, 300]];
  const cross: Point[] = [...tail(0).slice(1, 3), [0, -5], [0, -10], [420, -10], [420, 8], [0, 8]];
  return near(
    [
      ...extrude(side, fromAbove(-16), 16, cherry({ along: 'z', board: 41, heart: [-40, 60], tone })),
      ...box([-22, -32, -300], [0, -16, 300], cherry({ along: 'z', board: 41, heart: [-40, 60], tone })),
      ...box([-17, -17, -14], [-0.2, -4, 10], plain([0.014, 0.01, 0.008])),
      ...extrude(
        cross,
        fromAbove(-28),
        27.7,
        cherry({ along: 'x', board: 44, heart: [30, -90], tone: [0.95, 0.86, 0.8] }),
      ),
    ],
    [70, 150, 96],
    [6, -6, 0],
    { fieldDeg: 23, lamp: [-0.55, 0.62, -0.5], lampStrength: 1.8 },
  );
}
