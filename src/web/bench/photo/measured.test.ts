import { expect, test } from 'vitest';
import { drawn } from '../../../../test/kits/surfaces/drawn.ts';
import { photoRectify } from '../../../calculations/photoRectify.ts';
import { mean } from '../../../ground/statistics.ts';
import type { Knowledge } from '../../../knowledge/schema.ts';
import { mapped } from '../../../photo/geometry/homography.ts';
import type { Point } from '../../../photo/picture.ts';
import { runHere } from '../runHere.ts';
import { measuredMark } from './measured.ts';
import type { PhotoScale } from './photoScale.ts';

const knowledge = {} as Knowledge;
const world: Point[] = [
  [0, 0],
  [400, 0],
  [400, 250],
  [0, 250],
];
/** From the plane to the picture: turned, tilted. */
const toPicture = [
  [2.1, 0.2, 300],
  [-0.15, 2.0, 250],
  [0.0003, 0.0002, 1],
] as const;
const seen = (place: Point): Point => mapped(toPicture, place).point;

function scaleBy(image: readonly Point[]): PhotoScale {
  const asked = { image, world };
  const result = runHere(photoRectify, asked, knowledge);
  if (!result.ok) throw new Error('no view');
  return {
    kind: 'plane',
    asked,
    rectified: result.output,
    sigmaPx: 1.5,
    sigmaMm: 0,
    lensAllowancePercent: 0.5,
  };
}

/** A circle of 160 mm at the edge of the rectangle, by twelve marks. */
const rim = Array.from(
  { length: 12 },
  (_, i): Point => [360 + 80 * Math.cos((i * Math.PI) / 6), 200 + 80 * Math.sin((i * Math.PI) / 6)],
);

test('a circle in a tilted plane: its stated doubt is what draws of the marks and of the scale really scatter by', () => {
  const random = drawn(11);
  const shaken = ([x, y]: Point): Point => [x + 1.5 * random.normal(), y + 1.5 * random.normal()];
  const stated: number[] = [];
  const errors = Array.from({ length: 400 }, () => {
    const scale = scaleBy(world.map(seen).map(shaken));
    const mark = { id: 'circle-1', name: 'rim', kind: 'points' as const, points: rim.map(seen).map(shaken) };
    const measured = measuredMark(mark, scale, 1.5, knowledge);
    if (!measured?.ok || measured.length === undefined) throw new Error('not measured');
    // The lens is perfect here, so what is allowed for one is taken off again.
    const lensMm = 0.005 * measured.length.mm;
    stated.push(Math.sqrt(measured.length.sigmaMm ** 2 - lensMm ** 2));
    return measured.length.mm - 160;
  });
  const scatter = Math.sqrt(errors.reduce((sum, each) => sum + each * each, 0) / errors.length);
  const average = mean(stated);
  expect(scatter / average).toBeGreaterThan(0.8);
  expect(scatter / average).toBeLessThan(1.25);
});

test('the same marks far from a small scale are less sure than near it, whatever they are', () => {
  const far = rim.map(([x, y]): Point => [x + 900, y + 500]);
  const sigmaOf = (points: Point[], kind: 'circle' | 'ellipse') => {
    const mark = { id: `${kind}-1`, name: 'rim', kind: 'points' as const, points: points.map(seen) };
    const measured = measuredMark(mark, scaleBy(world.map(seen)), 1.5, knowledge);
    if (!measured?.ok) throw new Error('not measured');
    return Number(/give or take ([\d.]+) mm/.exec(measured.says)?.[1]);
  };
  for (const kind of ['circle', 'ellipse'] as const) {
    expect(sigmaOf(rim, kind)).toBeGreaterThan(0.3);
    expect(sigmaOf(far, kind)).toBeGreaterThan(2 * sigmaOf(rim, kind));
  }
});

test('by one known length: a rule of three, with its own doubt', () => {
  const scale: PhotoScale = {
    kind: 'known',
    lensAllowancePercent: 0.5,
    points: [
      [0, 0],
      [1000, 0],
    ],
    lengthMm: 500,
    sigmaMm: 0.8,
  };
  const mark = {
    id: 'length-1',
    name: 'length 1',
    kind: 'line' as const,
    points: [
      [10, 10],
      [10, 410],
    ] as Point[],
  };
  const measured = measuredMark(mark, scale, 1.5, knowledge);
  expect(measured?.ok && measured.length?.mm).toBeCloseTo(200, 9);
  // By hand: marks √2 · 1.5 px · 0.5; the known length's marks 0.4 of that; 0.8 · 0.4; and 0.5 in 100 of 200 for the lens.
  const byHand = Math.hypot(Math.SQRT2 * 0.75, 0.4 * Math.SQRT2 * 0.75, 0.32, 1);
  expect(measured?.ok && measured.length?.sigmaMm).toBeCloseTo(byHand, 6);
});

test('an angle is refused without a plane, in a sentence that says what to do', () => {
  const scale: PhotoScale = {
    kind: 'known',
    lensAllowancePercent: 0.5,
    points: [
      [0, 0],
      [1000, 0],
    ],
    lengthMm: 500,
    sigmaMm: 0.8,
  };
  const points: Point[] = [
    [0, 0],
    [9, 0],
    [0, 0],
    [0, 9],
  ];
  const measured = measuredMark(
    { id: 'angle-1', name: 'angle 1', kind: 'angle', points },
    scale,
    1.5,
    knowledge,
  );
  expect(measured).toMatchObject({
    ok: false,
    faults: [{ message: expect.stringMatching(/mark four points/) }],
  });
});
