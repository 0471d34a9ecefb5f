import type { Face, Look } from '../render/scene.ts';
import { add, times, unit, type Vec } from '../render/vector.ts';
import { box, extrude, fromAbove, fromRight, type Placing } from '../solids/extrude.ts';
import type { Point } from '../solids/shapes.ts';
import type { WoodOptions } from '../woods/wood.ts';
import { cushion } from './cushion.ts';

/** What the two chairs have in common; mm, the front of the seat at z = 0. */
export type ChairPlan = {
  wood: (options: WoodOptions) => Look;
  seatHeightMm: number;
  frontMm: number;
  backMm: number;
  depthMm: number;
  heightMm: number;
  stretcherTopMm: number;
  /** How far in from the outer face of the legs the side stretchers stand. */
  stretcherInMm: number;
  postTopMm: number;
  splat: { outline: Point[]; holes: Point[][] };
  crest: Point[];
  crestMm: number;
  seat: Look;
};

const leg = 45;
const rakeDeg = 11;
const fineMm = 0.8;

/** The plane of the back above the seat: x across, v up along the raked posts. */
export function backPlane(plan: Pick<ChairPlan, 'seatHeightMm' | 'depthMm'>, forwardMm: number): Placing {
  const rake = (rakeDeg * Math.PI) / 180;
  const v: Vec = [0, Math.cos(rake), -Math.sin(rake)];
  const out: Vec = [0, Math.sin(rake), Math.cos(rake)];
  return {
    origin: add([0, plan.seatHeightMm, -plan.depthMm + 8], times(out, forwardMm)),
    u: [1, 0, 0],
    v: unit(v),
  };
}

/** The whole chair, standing on the floor. */
export function chair(plan: ChairPlan): Face[] {
  return [
    ...legs(plan),
    ...posts(plan),
    ...rails(plan),
    ...stretchers(plan),
    ...back(plan),
    ...cushion(plan),
  ];
}

function legs({ wood, frontMm, seatHeightMm }: ChairPlan): Face[] {
  return [-1, 1].flatMap((side) => {
    const x = side > 0 ? frontMm / 2 - leg : -frontMm / 2;
    return box([x, 0, -leg], [x + leg, seatHeightMm, 0], wood({ along: 'y', board: 11 + side, fineMm }));
  });
}

function posts({ wood, backMm, seatHeightMm, depthMm, postTopMm }: ChairPlan): Face[] {
  const rake = Math.tan((rakeDeg * Math.PI) / 180) * (postTopMm - seatHeightMm);
  const profile: Point[] = [
    [depthMm - 26 + 34, 0],
    [depthMm + 8 + 30, 0],
    [depthMm + 8, seatHeightMm * 0.55],
    [depthMm + 10, seatHeightMm],
    [depthMm + 6 + rake * 0.42, seatHeightMm + (postTopMm - seatHeightMm) * 0.5],
    [depthMm + 2 + rake, postTopMm],
    [depthMm - 24 + rake, postTopMm],
    [depthMm - 28 + rake * 0.42, seatHeightMm + (postTopMm - seatHeightMm) * 0.5],
    [depthMm - 34, seatHeightMm],
    [depthMm - 36, seatHeightMm * 0.55],
  ];
  return [-1, 1].flatMap((side) => {
    const x = side > 0 ? backMm / 2 - 36 : -backMm / 2;
    return extrude(profile, fromRight(x), 36, wood({ along: 'y', board: 21 + side, fineMm }));
  });
}

function rails({ wood, frontMm, backMm, depthMm, seatHeightMm }: ChairPlan): Face[] {
  const low = seatHeightMm - 68;
  const front = box(
    [-frontMm / 2 + leg, low, -26],
    [frontMm / 2 - leg, seatHeightMm, -3],
    wood({ along: 'x', board: 31, fineMm }),
  );
  const rear = box(
    [-backMm / 2 + 30, low, -depthMm],
    [backMm / 2 - 30, seatHeightMm + 14, -depthMm + 30],
    wood({ along: 'x', board: 32, fineMm }),
  );
  const side = [-1, 1].flatMap((way) => {
    const plan: Point[] = [
      [way * (frontMm / 2 - 4), leg - 4],
      [way * (backMm / 2 - 3), depthMm - 30],
      [way * (backMm / 2 - 26), depthMm - 30],
      [way * (frontMm / 2 - 27), leg - 4],
    ];
    return extrude(plan, fromAbove(low), 68, wood({ along: 'z', board: 33 + way, fineMm }));
  });
  return [...front, ...rear, ...side];
}

function stretchers({ wood, frontMm, backMm, depthMm, stretcherTopMm, stretcherInMm }: ChairPlan): Face[] {
  const high = 30;
  const low = stretcherTopMm - high;
  const side = [-1, 1].flatMap((way) => {
    const [x0, x1] = [frontMm / 2 - stretcherInMm, backMm / 2 - stretcherInMm];
    const plan: Point[] = [
      [way * x0, leg - 6],
      [way * x1, depthMm + 2],
      [way * (x1 - 17), depthMm + 2],
      [way * (x0 - 17), leg - 6],
    ];
    return extrude(plan, fromAbove(low), high, wood({ along: 'z', board: 41 + way, fineMm }));
  });
  const half = (frontMm + backMm) / 4 - stretcherInMm - 10;
  const z = -depthMm * 0.46;
  return [
    ...side,
    ...box([-half, low + 3, z - 17], [half, low + high - 3, z], wood({ along: 'x', board: 44, fineMm })),
  ];
}

function back(plan: ChairPlan): Face[] {
  const { wood, splat, crest, crestMm } = plan;
  return [
    ...extrude(
      splat.outline,
      backPlane(plan, 2),
      12,
      wood({ along: 'y', board: 51, fineMm, heart: [10, -60] }),
      { holes: splat.holes },
    ),
    ...extrude(crest, backPlane(plan, -8), crestMm, wood({ along: 'x', board: 52, fineMm })),
    ...shoe(plan),
  ];
}

function shoe({ wood, depthMm, seatHeightMm }: ChairPlan): Face[] {
  const profile: Point[] = [
    [depthMm - 34, seatHeightMm + 10],
    [depthMm - 4, seatHeightMm + 10],
    [depthMm - 4, seatHeightMm + 34],
    [depthMm - 20, seatHeightMm + 34],
    [depthMm - 26, seatHeightMm + 24],
  ];
  return extrude(profile, fromRight(-86), 172, wood({ along: 'x', board: 53, fineMm }));
}
