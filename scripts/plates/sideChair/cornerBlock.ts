import { near } from '../chairs/studio.ts';
import type { Face, Scene } from '../render/scene.ts';
import { box, extrude, fromAbove } from '../solids/extrude.ts';
import { lathe } from '../solids/lathe.ts';
import { circle, type Point } from '../solids/shapes.ts';
import { shift, turn } from '../solids/turn.ts';
import { plain, wood } from '../woods/wood.ts';
import { mahogany } from './plan.ts';

const steel = plain([0.34, 0.33, 0.31], 1, 0.25);
const dark = plain([0.02, 0.018, 0.016]);

/** A pointed wood screw lying along y, its head above: tapered core, thread to the point. */
function gimletScrew(): Face[] {
  const thread: Point[] = Array.from({ length: 45 }, (_, i) => {
    const share = i / 44;
    const core = 0.25 + 1.55 * Math.min(1, share * 1.5);
    return [core + (i % 2 === 0 ? 0 : 0.3 + 0.75 * Math.min(1, share * 2)), share * 25];
  });
  return lathe([[0, -0.5], ...thread, [1.95, 26], [1.95, 37], [4.4, 40.4], [4.4, 41], [0, 41]], steel);
}

/** The head of a slotted screw, its face at y. */
function head(x: number, y: number, z: number): Face[] {
  return [
    ...shift(
      lathe(
        [
          [4.6, -4],
          [4.6, 0.3],
          [0, 0.3],
        ],
        steel,
      ),
      [x, y, z],
    ),
    ...turn(box([x - 4, y + 0.25, z - 0.55], [x + 4, y + 0.36, z + 0.55], dark), 'y', 28, [x, y, z]),
  ];
}

/** A corner of the seat from below: the block spans it clear of the leg; one of its screws lies beside. */
export function cornerBlock(): Scene {
  const block: Point[] = [
    [2, -88],
    [20, -88],
    [88, -20],
    [88, -2],
    [62, -2],
    [2, -62],
  ];
  const birch = wood('birch', {
    along: 'x',
    board: 8,
    heart: [50, -120],
    tone: [1, 0.92, 0.82],
    gloss: 0.15,
  });
  const holes = [circle([52, -52], 3.4)];
  return near(
    [
      ...box(
        [-24, -60, 0],
        [0, 0, 260],
        mahogany({ along: 'z', board: 33, tone: [0.9, 0.8, 0.75], gloss: 0.2 }),
      ),
      ...box(
        [0, -60, -24],
        [300, 0, 0],
        mahogany({ along: 'x', board: 31, tone: [0.9, 0.8, 0.75], gloss: 0.2 }),
      ),
      ...box([-26, -80, -26], [20, 170, 20], mahogany({ along: 'y', board: 12 })),
      ...turn(
        extrude(
          block.map(([a, b]): Point => [a, b]),
          fromAbove(-34),
          26,
          birch,
          { holes },
        ),
        'y',
        0,
      ),
      ...head(13, -8, 70),
      ...shift(
        lathe(
          [
            [4.4, -1],
            [4.4, 0.04],
            [2.4, 0.05],
            [0, 0.05],
          ],
          dark,
        ),
        [70, -8, 13],
      ),
      ...box([46, -34.5, 46], [58, -34, 58], dark),
      ...shift(turn(turn(gimletScrew(), 'z', 90), 'y', 35), [112, -25.5, 112]),
      ...box(
        [-24, -64, 0],
        [400, -30, 320],
        wood('birch', { along: 'x', board: 3, tone: [0.8, 0.68, 0.55] }),
      ),
    ],
    [205, 210, 285],
    [58, -18, 50],
    { fieldDeg: 27, lamp: [-0.35, 0.8, 0.75] },
  );
}
