import { near } from '../chairs/studio.ts';
import type { Scene } from '../render/scene.ts';
import { box, extrude, fromRight } from '../solids/extrude.ts';
import { arc, type Point } from '../solids/shapes.ts';
import { wood } from '../woods/wood.ts';
import { mahogany } from './plan.ts';

const low: Point[] = [
  [-14, -62],
  [14, -62],
  [14, 0],
  [-14, 0],
];
/** The shoe as one with the rail: a hollow, a step and a flat in which the splat stands. */
const moulded: Point[] = [
  [-14, -1],
  [14, -1],
  [14, 22],
  [-3, 22],
  [-3, 19],
  ...arc([-15, 18], 11, 0, -84, 14).map(([a, b]): Point => [a, b]),
];

/** The middle of the back from in front and from the end of the shoe: one grain through rail and shoe. */
export function shoe(): Scene {
  const board = wood('birch', {
    along: 'x',
    board: 14,
    heart: [-70, 30],
    tone: [0.42, 0.28, 0.26],
    gloss: 0.3,
  });
  return near(
    [
      ...extrude(low, fromRight(-190), 440, board),
      ...extrude(moulded, fromRight(-76), 190, board, { roundDeg: 20 }),
      ...box([-50, 20, -10], [88, 260, 1], mahogany({ along: 'y', board: 51, heart: [10, -60] })),
      ...box([-226, -160, -20], [-190, 300, 16], mahogany({ along: 'y', board: 22 })),
    ],
    [-300, 118, 270],
    [-40, 14, 0],
    { fieldDeg: 26, lamp: [-0.75, 0.62, 0.42] },
  );
}
