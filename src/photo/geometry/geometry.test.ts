import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawn } from '../../../test/kits/surfaces/drawn.ts';
import type { Point } from '../picture.ts';
import { fitCircle } from './circleFit.ts';
import { directEllipse, type Ellipse } from './ellipseDirect.ts';
import { fitEllipse, rmsOffEllipse } from './ellipseFit.ts';
import { footOnEllipse } from './ellipseFoot.ts';
import { type Homography, inverse, mapped } from './homography.ts';
import { distorted, undistorted } from './lens.ts';
import { estimateLens, lensFrameOf } from './lensEstimate.ts';
import { angleInPlane, lengthInPlane } from './planeMeasure.ts';
import { rectifyPlane } from './rectify.ts';

// Properties: what was put in must come out, at every scale, turn and shift; and the doubt must be what repeated tries show.

const seed = 20261125;
const toPicture: Homography = [
  [3.1, 0.6, 400],
  [-0.3, 2.8, 300],
  [0.0004, 0.0007, 1],
];
const grid: Point[] = [0, 1, 2, 3].flatMap((i) => [0, 1, 2].map((j): Point => [i * 90, j * 80]));
const corners: Point[] = [
  [0, 0],
  [180, 0],
  [180, 250],
  [0, 250],
];
const see = (points: readonly Point[], h = toPicture) => points.map((point) => mapped(h, point).point);
const far = (a: number, b: number) => Math.abs(a - b) / Math.max(1e-300, Math.abs(b));

const anyView = fc.record({
  turn: fc.double({ min: -3, max: 3, noNaN: true }),
  scale: fc.double({ min: 0.2, max: 20, noNaN: true }),
  shear: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  tiltX: fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
  tiltY: fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
  at: fc.tuple(
    fc.double({ min: -5000, max: 5000, noNaN: true }),
    fc.double({ min: -5000, max: 5000, noNaN: true }),
  ),
});

describe('a known view comes out again', () => {
  test('whatever its turn, shear, tilt and place', () => {
    fc.assert(
      fc.property(anyView, ({ turn, scale, shear, tiltX, tiltY, at }) => {
        const [cos, sin] = [scale * Math.cos(turn), scale * Math.sin(turn)];
        const h: Homography = [
          [cos + at[0] * tiltX, shear * cos - sin + at[0] * tiltY, at[0]],
          [sin + at[1] * tiltX, shear * sin + cos + at[1] * tiltY, at[1]],
          [tiltX, tiltY, 1],
        ];
        const fitted = rectifyPlane({ image: see(grid, h), world: grid });
        const back = inverse(fitted?.view.toPicture as Homography);
        for (const [x, y] of [
          [45, 40],
          [200, 10],
        ] as Point[]) {
          const { point } = mapped(back, mapped(h, [x, y]).point);
          expect(Math.hypot(point[0] - x, point[1] - y)).toBeLessThan(1e-7);
        }
      }),
      { seed, numRuns: 200 },
    );
  });

  test.each([1e-9, 1e-3, 1e3, 1e9])('with the picture or the plane %d times as large', (by) => {
    const large = (points: readonly Point[], k: number) => points.map(([x, y]): Point => [x * k, y * k]);
    for (const [a, b] of [
      [by, 1],
      [1, by],
      [by, by],
    ] as const) {
      const pairs = { image: large(see(grid), a), world: large(grid, b) };
      const fitted = rectifyPlane(pairs);
      const marks = large(
        see([
          [10, 10],
          [200, 130],
        ]),
        a,
      ) as [Point, Point];
      const found = lengthInPlane(
        { view: fitted?.view as never, sigmaPx: a, pairs: { ...pairs, sigmaPx: a, sigmaMm: 0 } },
        marks,
      );
      const plain = lengthInPlane(
        { view: { toPicture }, sigmaPx: 1, pairs: { image: see(grid), world: grid, sigmaPx: 1, sigmaMm: 0 } },
        see([
          [10, 10],
          [200, 130],
        ]) as [Point, Point],
      );
      expect(far(found?.value as number, b * Math.hypot(190, 120))).toBeLessThan(1e-10);
      expect(far(found?.sigma as number, b * (plain?.sigma as number))).toBeLessThan(1e-6);
    }
  });

  test('the picture turned and shifted gives the same length and doubt', () => {
    const moved = ([x, y]: Point): Point => [0.6 * x - 0.8 * y + 9000, 0.8 * x + 0.6 * y - 40];
    const answer = (turn: (point: Point) => Point) => {
      const image = see(corners).map(turn);
      const fitted = rectifyPlane({ image, world: corners });
      const pairs = { image, world: corners, sigmaPx: 0.7, sigmaMm: 0.1 };
      const marks = see([
        [20, 30],
        [150, 200],
      ]).map(turn) as [Point, Point];
      return lengthInPlane({ view: fitted?.view as never, sigmaPx: 0.7, pairs }, marks);
    };
    const [still, turned] = [answer((point) => point), answer(moved)];
    expect(far(turned?.value as number, still?.value as number)).toBeLessThan(1e-9);
    expect(far(turned?.sigma as number, still?.sigma as number)).toBeLessThan(1e-6);
  });
});

describe('the doubt is what repeated tries show', () => {
  const marksAt: [Point, Point] = [
    [20, 30],
    [150, 200],
  ];
  const secondAt: [Point, Point] = [
    [10, 220],
    [170, 40],
  ];
  test.each([
    ['four corners', corners, 0.8, 0],
    ['four corners, their places known to half a millimeter', corners, 0.8, 0.5],
    ['a grid of twelve', grid, 0.8, 0],
    ['a grid of twelve, marks without doubt', grid, 0, 0.4],
  ])('%s', (_, world, sigmaPx, sigmaMm) => {
    const random = drawn(seed);
    const shaken = (points: readonly Point[], by: number) =>
      points.map(([x, y]): Point => [x + by * random.normal(), y + by * random.normal()]);
    const lengths: number[] = [];
    const angles: number[] = [];
    for (let i = 0; i < 4000; i++) {
      // The places are where they are; what is written down of them is off.
      const pairs = { image: shaken(see(world), sigmaPx), world: shaken(world, sigmaMm) };
      const view = rectifyPlane(pairs)?.view;
      if (view === undefined) throw new Error('no view');
      const marks = shaken(see(marksAt), sigmaPx) as [Point, Point];
      const second = shaken(see(secondAt), sigmaPx) as [Point, Point];
      lengths.push(lengthInPlane({ view, sigmaPx }, marks)?.value as number);
      angles.push(angleInPlane({ view, sigmaPx }, marks, second)?.value as number);
    }
    const ground = { view: { toPicture }, sigmaPx, pairs: { image: see(world), world, sigmaPx, sigmaMm } };
    const length = lengthInPlane(ground, see(marksAt) as [Point, Point]);
    const angle = angleInPlane(ground, see(marksAt) as [Point, Point], see(secondAt) as [Point, Point]);
    expect(far(length?.sigma as number, spread(lengths))).toBeLessThan(0.05);
    expect(far(angle?.sigma as number, spread(angles))).toBeLessThan(0.05);
  });

  test('pairs that lie further off than stated raise the doubt', () => {
    const random = drawn(seed);
    const image = see(grid).map(([x, y]): Point => [x + 3 * random.normal(), y + 3 * random.normal()]);
    const view = rectifyPlane({ image, world: grid })?.view as never;
    const doubt = (sigmaPx: number) =>
      lengthInPlane(
        { view, sigmaPx: 1, pairs: { image, world: grid, sigmaPx, sigmaMm: 0 } },
        see(marksAt) as [Point, Point],
      )?.fromPairs as number;
    expect(far(doubt(0.1), doubt(0.01))).toBeLessThan(1e-9);
    expect(far(doubt(0), doubt(0.01))).toBeLessThan(1e-6);
    expect(doubt(30) / doubt(15)).toBeCloseTo(2, 6);
  });

  test('a circle’s radius and center', () => {
    const random = drawn(seed);
    const found = {
      radius: [] as number[],
      x: [] as number[],
      sigma: [] as number[],
      sigmaX: [] as number[],
    };
    for (let i = 0; i < 3000; i++) {
      const points = Array.from({ length: 25 }, (_, k): Point => {
        const angle = -1 + (k / 24) * 1.6;
        return [300 * Math.cos(angle) + 0.3 * random.normal(), 300 * Math.sin(angle) + 0.3 * random.normal()];
      });
      const circle = fitCircle(points);
      if (circle?.sigma === undefined || circle.sigmaCentre === undefined) throw new Error('no circle');
      found.radius.push(circle.radius);
      found.x.push(circle.centre[0]);
      found.sigma.push(circle.sigma ** 2);
      found.sigmaX.push(circle.sigmaCentre[0] ** 2);
    }
    expect(far(Math.sqrt(mean(found.sigma)), spread(found.radius))).toBeLessThan(0.05);
    expect(far(Math.sqrt(mean(found.sigmaX)), spread(found.x))).toBeLessThan(0.05);
    expect(Math.abs(mean(found.radius) - 300)).toBeLessThan(0.2);
  });

  test('an ellipse’s axes and angle', () => {
    const random = drawn(seed);
    const tries = Array.from({ length: 800 }, () => {
      const points = onEllipse(top, 30, 5).map(([x, y]): Point => [x + random.normal(), y + random.normal()]);
      const fit = fitEllipse(points);
      if (fit?.sigma === undefined) throw new Error('no ellipse');
      return { ...fit.ellipse, sigma: fit.sigma };
    });
    for (const name of ['semiMajor', 'semiMinor', 'angleRad'] as const) {
      const said = Math.sqrt(mean(tries.map(({ sigma }) => sigma[name] ** 2)));
      expect(far(said, spread(tries.map((each) => each[name]))), name).toBeLessThan(0.08);
    }
  });
});

const top: Ellipse = { centre: [640, 410], semiMajor: 300, semiMinor: 180, angleRad: 2.9 };

function onEllipse(
  { centre, semiMajor, semiMinor, angleRad }: Ellipse,
  count: number,
  arc = 2 * Math.PI,
): Point[] {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  return Array.from({ length: count }, (_, i) => {
    const [u, v] = [semiMajor * Math.cos((i / count) * arc), semiMinor * Math.sin((i / count) * arc)];
    return [centre[0] + cos * u - sin * v, centre[1] + sin * u + cos * v];
  });
}

describe('circles and ellipses at every scale', () => {
  test.each([1e-9, 1, 1e9])('%d', (by) => {
    const points = onEllipse(top, 17).map(([x, y]): Point => [x * by, y * by]);
    for (const found of [directEllipse(points), fitEllipse(points)?.ellipse]) {
      expect(far(found?.semiMajor as number, 300 * by)).toBeLessThan(1e-9);
      expect(far(found?.semiMinor as number, 180 * by)).toBeLessThan(1e-9);
      expect(found?.angleRad).toBeCloseTo(2.9, 8);
    }
    const round = Array.from(
      { length: 9 },
      (_, i): Point => [by * (5 + 3 * Math.cos(i)), by * (2 + 3 * Math.sin(i))],
    );
    expect(far(fitCircle(round)?.radius as number, 3 * by)).toBeLessThan(1e-12);
  });

  test('the geometric ellipse is never further from the points than the direct one', () => {
    const random = drawn(seed);
    for (let i = 0; i < 100; i++) {
      const points = onEllipse(top, 12, 4).map(
        ([x, y]): Point => [x + 8 * random.normal(), y + 8 * random.normal()],
      );
      const [direct, fitted] = [directEllipse(points), fitEllipse(points)];
      if (direct === undefined || fitted === undefined) continue;
      expect(rmsOffEllipse(points, fitted.ellipse)).toBeLessThanOrEqual(
        rmsOffEllipse(points, direct) * (1 + 1e-12),
      );
    }
  });

  test('no point of an ellipse is nearer than its foot', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (b, x, y) => {
          const { off, at } = footOnEllipse({ centre: [0, 0], axes: [1, b], angleRad: 0 }, [x, y]);
          expect(Math.hypot(x - Math.cos(at), y - b * Math.sin(at))).toBeCloseTo(Math.abs(off), 9);
          for (let k = 0; k < 720; k++) {
            const away = Math.hypot(x - Math.cos((k * Math.PI) / 360), y - b * Math.sin((k * Math.PI) / 360));
            expect(away).toBeGreaterThanOrEqual(Math.abs(off) - 1e-9);
          }
        },
      ),
      { seed, numRuns: 200 },
    );
  });
});

describe('the lens', () => {
  const frame = lensFrameOf(4000, 3000);
  test('there and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.25, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 3999, noNaN: true }),
        fc.double({ min: 0, max: 2999, noNaN: true }),
        (k1, x, y) => {
          const back = undistorted({ k1 }, frame, distorted({ k1 }, frame, [x, y])) as Point;
          expect(Math.hypot(back[0] - x, back[1] - y)).toBeLessThan(1e-8);
        },
      ),
      { seed, numRuns: 300 },
    );
  });

  const wide = Array.from({ length: 9 }, (_, i) =>
    Array.from({ length: 12 }, (_, j): Point => [i * 22, j * 22]),
  ).flat();
  const view: Homography = [
    [14, 1.2, 300],
    [-0.9, 10.5, 260],
    [0.0001, 0.0003, 1],
  ];
  test('its bend is found from a card that fills the picture, as sure as it says', () => {
    const random = drawn(seed);
    const tries = Array.from({ length: 200 }, () => {
      const image = see(wide, view).map((point): Point => {
        const [x, y] = distorted({ k1: -0.04 }, frame, point);
        return [x + 0.4 * random.normal(), y + 0.4 * random.normal()];
      });
      const lens = estimateLens({ image, world: wide }, 4000, 3000);
      if (!lens.known) throw new Error(lens.why);
      return lens;
    });
    const found = tries.map(({ k1 }) => k1);
    expect(mean(found)).toBeCloseTo(-0.04, 4);
    expect(far(Math.sqrt(mean(tries.map(({ sigmaK1 }) => sigmaK1 ** 2))), spread(found))).toBeLessThan(0.15);
  });

  test('a length beside the card is as sure as it says, the lens being fitted along', () => {
    const random = drawn(seed);
    const shaken = (points: readonly Point[]) =>
      see(points, view).map((point): Point => {
        const [x, y] = distorted({ k1: -0.04 }, frame, point);
        return [x + 0.4 * random.normal(), y + 0.4 * random.normal()];
      });
    const ends: Point[] = [
      [-15, 20],
      [210, 100],
    ];
    const tries = Array.from({ length: 300 }, () => {
      const pairs = { image: shaken(wide), world: wide, sigmaPx: 0.4, sigmaMm: 0 };
      const lens = estimateLens(pairs, 4000, 3000);
      if (!lens.known) throw new Error(lens.why);
      const length = lengthInPlane(
        { view: lens.fitted.view, sigmaPx: 0.4, pairs },
        shaken(ends) as [Point, Point],
      );
      return length as { value: number; sigma: number };
    });
    const values = tries.map(({ value }) => value);
    expect(Math.abs(mean(values) - Math.hypot(225, 80))).toBeLessThan(0.02);
    expect(far(Math.sqrt(mean(tries.map(({ sigma }) => sigma ** 2))), spread(values))).toBeLessThan(0.15);
  });

  test('a card that fills little of it, or few marks, leave it unknown', () => {
    const small: Homography = [
      [1, 0, 1900],
      [0, 1, 1400],
      [0.0001, 0, 1],
    ];
    const random = drawn(seed);
    const image = see(wide, small).map(
      ([x, y]): Point => [x + 0.3 * random.normal(), y + 0.3 * random.normal()],
    );
    const [little, few] = [
      estimateLens({ image, world: wide }, 4000, 3000),
      estimateLens({ image: see(corners), world: corners }, 4000, 3000),
    ];
    expect(little).toMatchObject({ known: false, why: expect.stringMatching(/fill more of it/) });
    expect(few).toMatchObject({ known: false, why: expect.stringMatching(/^4 marks are too few/) });
  });
});

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value / values.length, 0);
}

function spread(values: readonly number[]): number {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1));
}
