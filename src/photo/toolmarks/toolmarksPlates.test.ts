import { beforeAll, describe, expect, test } from 'vitest';
import { planerPlate, plateBoard, platePlaces } from '../../../scripts/toolmarksPlates.ts';
import { randomFrom } from '../../../test/kits/surfaces/random.ts';
import type { Picture } from '../picture.ts';
import { toolmarks } from './toolmarks.ts';
import { cloudOf, farFromClouds } from './toolmarksClouds.ts';
import { strongestEdge } from './toolmarksEdge.ts';
import type { MarksPlane } from './toolmarksPlane.ts';

// The renderer of the worked examples’ plates, with its own woods, lamp, relief and printing: nothing of it was learned from.
describe('boards of another renderer', () => {
  let rail: Picture;
  beforeAll(() => {
    rail = planerPlate();
  }, 60_000);

  test.each(['left', 'middle', 'right', 'long', 'low'] as const)(
    'the ripple of a planer, %s of the rail, is named so or not at all',
    (name) => {
      const { region, mmPerPx, directionRad } = platePlaces[name];
      const found = toolmarks(rail, region, mmPerPx, directionRad);
      expect(['rotary-planer', 'cannot-tell']).toContain(found?.kind);
      expect(found?.likelihoods['rotary-planer']).toBe(1);
      expect(found?.regularity).toBeGreaterThan(0.75);
    },
  );

  test('the rail’s edge with the wall behind it is not taken for a mark', () => {
    const { region, mmPerPx, directionRad } = platePlaces['lower edge'];
    const found = toolmarks(rail, region, mmPerPx, directionRad);
    expect(found?.why).toBe('an edge');
    expect(new Set(Object.values(found?.likelihoods ?? {}))).toEqual(new Set([1]));
  });

  test.each([
    ['rotary-planer', 60_001],
    ['rotary-planer', 60_002],
    ['straight-saw', 60_001],
    ['circular-saw', 60_001],
    ['band-saw', 60_001],
  ] as const)('%s %i is named rightly or not at all', { timeout: 60_000 }, (kind, seed) => {
    const { picture, mmPerPx } = plateBoard(kind, seed);
    const whole = { x: 0, y: 0, widthPx: picture.widthPx, heightPx: picture.heightPx };
    expect([kind, 'cannot-tell']).toContain(toolmarks(picture, whole, mmPerPx, 0)?.kind);
  });
});

describe('a region’s edge', () => {
  const plane = (value: (x: number, y: number) => number): MarksPlane => ({
    along: 300,
    across: 200,
    stepMm: 0.25,
    values: Float32Array.from({ length: 60_000 }, (_, at) => value(at % 300, Math.floor(at / 300))),
  });
  const random = randomFrom(7);
  const noise = () => 0.05 * random.normal();

  test('is as high as drawn, whatever its direction', () => {
    for (const turn of [0, 0.4, 1.3, 2.2]) {
      const edged = plane((x, y) =>
        Math.cos(turn) * (x - 150) + Math.sin(turn) * (y - 100) > 40 ? 0.7 : noise(),
      );
      expect(strongestEdge(edged).step).toBeGreaterThan(0.55);
      expect(strongestEdge(edged).step).toBeLessThan(0.72);
      expect(strongestEdge(edged).clear).toBeGreaterThan(3);
    }
  });

  test('is not made by waves', () => {
    const { clear } = strongestEdge(plane((x) => Math.sin(x / 2)));
    expect(clear).toBeLessThan(0.5);
  });
});

test('a cloud’s distance counts spreads in any direction', () => {
  const random = randomFrom(3);
  const rows = Array.from({ length: 4000 }, () => {
    const [a, b] = [random.normal(), random.normal()];
    return [a, 0.9 * a + Math.sqrt(1 - 0.81) * b];
  });
  const cloud = cloudOf(rows);
  // Along the cloud three spreads are near, across it far.
  const [along, across] = [farFromClouds([3, 3], [cloud]), farFromClouds([3, -3], [cloud])];
  // By hand: the covariance 1.11, 0.9 (a tenth and 0.01 added), its eigenvalues 2.01 and 0.21.
  expect(along).toBeCloseTo(Math.sqrt(18 / 2.01), 0);
  expect(across).toBeCloseTo(Math.sqrt(18 / 0.21), 0);
});
