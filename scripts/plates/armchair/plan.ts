import { type ChairPlan, chair } from '../chairs/chair.ts';
import type { Face } from '../render/scene.ts';
import { extrude, fromAbove, fromRight } from '../solids/extrude.ts';
import { mirrored, type Point, smoothLine, smoothLoop } from '../solids/shapes.ts';
import { turn } from '../solids/turn.ts';
import { noise } from '../woods/noise.ts';
import { type WoodOptions, wood } from '../woods/wood.ts';

/** Cherry gone brown with age. */
export const cherry = (options: WoodOptions) =>
  wood('cherry', { gloss: 0.4, tone: [0.9, 0.82, 0.78], ...options });

const crestHalf = smoothLine(
  [
    [0, 545],
    [60, 540],
    [130, 522],
    [200, 506],
    [252, 512],
    [262, 498],
    [246, 478],
    [180, 466],
    [90, 474],
    [0, 480],
  ],
  6,
);
const splatHalf = smoothLine(
  [
    [76, 16],
    [74, 50],
    [50, 100],
    [40, 150],
    [62, 220],
    [98, 290],
    [104, 340],
    [80, 390],
    [58, 430],
    [70, 490],
  ],
  7,
);
const both = (half: Point[]): Point[] => [...mirrored(half), ...half].toReversed();

const plan: ChairPlan = {
  wood: cherry,
  seatHeightMm: 422,
  frontMm: 616,
  backMm: 467,
  depthMm: 463,
  heightMm: 994,
  stretcherTopMm: 108,
  stretcherInMm: 2,
  postTopMm: 910,
  splat: { outline: both(splatHalf), holes: [] },
  crest: both(crestHalf),
  crestMm: 25,
  seat: {
    gloss: 0.08,
    colour(x, y, z, out) {
      const weave = 1 + 0.06 * Math.sin(x * 1.1 + z * 1.1) + 0.12 * noise(x * 0.03, y * 0.05, z * 0.03, 5);
      out[0] = 0.075 * weave;
      out[1] = 0.055 * weave;
      out[2] = 0.045 * weave;
    },
  },
};

/** The invented armchair: a solid splat, arms of the making, stretchers flush with the legs. */
export function armchair(): Face[] {
  return [...chair(plan), ...[-1, 1].flatMap(arm)];
}

function arm(side: number): Face[] {
  const handle: Point[] = smoothLoop(
    [
      [222, 462],
      [250, 400],
      [284, 300],
      [306, 200],
      [308, 140],
      [326, 122],
      [350, 140],
      [348, 190],
      [328, 290],
      [288, 400],
      [250, 470],
    ],
    7,
  );
  const support: Point[] = smoothLine(
    [
      [178, 350],
      [176, 420],
      [196, 500],
      [204, 570],
      [176, 650],
    ],
    8,
  );
  const front = support.toReversed().map(([a, b]): Point => [a - 27, b]);
  const placed = (points: Point[]) => points.map(([x, z]): Point => [side * x, z]);
  return [
    ...extrude(placed(handle), fromAbove(643), 26, cherry({ along: 'z', board: 61 + side, fineMm: 0.8 })),
    ...turn(
      extrude(
        [...support, ...front],
        fromRight(side * 296 - 14),
        28,
        cherry({ along: 'y', board: 64 + side, fineMm: 0.8 }),
      ),
      'z',
      side * -7,
      [side * 296, 400, 0],
    ),
  ];
}
