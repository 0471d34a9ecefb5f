import type { ChairPlan } from '../chairs/chair.ts';
import { mirrored, type Point, smoothLine, smoothLoop } from '../solids/shapes.ts';
import { noise } from '../woods/noise.ts';
import { type WoodOptions, wood } from '../woods/wood.ts';

/** Stained and lacquered mahogany. */
export const mahogany = (options: WoodOptions) => wood('mahogany', { gloss: 0.55, ...options });

const crestHalf = smoothLine(
  [
    [0, 500],
    [40, 494],
    [95, 476],
    [160, 480],
    [214, 500],
    [232, 492],
    [226, 470],
    [196, 452],
    [150, 444],
    [90, 442],
    [0, 440],
  ],
  6,
);
const outlineHalf = smoothLine(
  [
    [70, 16],
    [62, 60],
    [46, 120],
    [44, 165],
    [62, 225],
    [92, 300],
    [98, 360],
    [84, 410],
    [86, 450],
  ],
  7,
);

const both = (half: Point[]): Point[] => [...mirrored(half), ...half].toReversed();
const pair = (loop: Point[]): Point[][] => [loop, mirrored(loop)];

/** The invented side chair: a pierced splat, straight legs, stretchers in the middle of the legs. */
export const sideChair: ChairPlan = {
  wood: mahogany,
  seatHeightMm: 454,
  frontMm: 521,
  backMm: 400,
  depthMm: 419,
  heightMm: 959,
  stretcherTopMm: 117,
  stretcherInMm: 9.5,
  postTopMm: 908,
  splat: {
    outline: both(outlineHalf),
    holes: [
      ...pair(
        smoothLoop(
          [
            [12, 40],
            [36, 56],
            [28, 104],
            [12, 140],
            [8, 90],
          ],
          6,
        ),
      ),
      ...pair(
        smoothLoop(
          [
            [14, 205],
            [40, 235],
            [66, 300],
            [62, 350],
            [40, 320],
            [20, 262],
          ],
          6,
        ),
      ),
      ...pair(
        smoothLoop(
          [
            [58, 372],
            [78, 376],
            [70, 412],
            [70, 436],
            [52, 420],
          ],
          6,
        ),
      ),
      smoothLoop(
        [
          [0, 290],
          [20, 330],
          [28, 380],
          [14, 424],
          [0, 430],
          [-14, 424],
          [-28, 380],
          [-20, 330],
        ],
        6,
      ),
    ],
  },
  crest: both(crestHalf),
  crestMm: 24,
  seat: {
    gloss: 0.05,
    colour(x, y, z, out) {
      const weave =
        1 + 0.1 * Math.sin(x * 1.3) * Math.sin(z * 1.3) + 0.08 * noise(x * 0.05, y * 0.05, z * 0.05, 5);
      out[0] = 0.16 * weave;
      out[1] = 0.2 * weave;
      out[2] = 0.17 * weave;
    },
  },
};
