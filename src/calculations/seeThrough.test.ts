import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  angleOfDifference,
  closingAngle,
  type OpeningEdge,
  openShare,
} from '../photo/geometry/seeThrough.ts';
import type { CalculationContext } from './define.ts';
import { edgesSeeThrough } from './seeThrough.ts';
import { outputOf } from './testing/outputOf.ts';

const context = { yearNow: 2026 } as CalculationContext;
const seed = 22;
const mm = fc.double({ min: 2, max: 60, noNaN: true });
const share = fc.double({ min: 0.01, max: 1, noNaN: true });
const opening = fc
  .record({ width: mm, thickness: mm, depth: share, cut: mm })
  .map(({ width, thickness, depth, cut }) => ({
    width,
    edge: { thicknessMm: thickness, chamferDepthMm: depth * thickness, chamferWidthMm: cut },
  }));
const angle = fc.double({ min: 0, max: 1.4, noNaN: true });

/** How many of many sights pass both jambs, tried depth by depth. */
function marched(width: number, edge: OpeningEdge, angleRad: number): number {
  let open = 0;
  const rays = 2000;
  for (let ray = 0; ray < rays; ray++) {
    const start = (width * (ray + 0.5)) / rays;
    let passes = true;
    for (let step = 0; step <= 400 && passes; step++) {
      const depth = (edge.thicknessMm * step) / 400;
      const begins = edge.thicknessMm - edge.chamferDepthMm;
      const back = depth > begins ? (edge.chamferWidthMm * (depth - begins)) / edge.chamferDepthMm : 0;
      const at = start + depth * Math.tan(angleRad);
      passes = at >= -back && at <= width + back;
    }
    if (passes) open++;
  }
  return open / rays;
}

describe('what stays open', () => {
  test('is what rays through a drawn edge find', () => {
    fc.assert(
      fc.property(opening, angle, ({ width, edge }, at) => {
        expect(Math.abs(openShare(width, edge, at) - marched(width, edge, at))).toBeLessThan(2e-3);
      }),
      { seed, numRuns: 40 },
    );
  });

  test('is all of it square on, falls with the angle, and is alike from both sides', () => {
    fc.assert(
      fc.property(opening, angle, angle, ({ width, edge }, one, two) => {
        expect(openShare(width, edge, 0)).toBe(1);
        expect(openShare(width, edge, -one)).toBe(openShare(width, edge, one));
        const [less, more] = [Math.min(one, two), Math.max(one, two)];
        expect(openShare(width, edge, more)).toBeLessThanOrEqual(openShare(width, edge, less) + 1e-12);
        expect(openShare(width, edge, closingAngle(width, edge) + 1e-9)).toBeLessThan(1e-6);
      }),
      { seed },
    );
  });

  test('of 20 mm through 20 mm at 45°: nothing square; half where the back half is sloped at 45°', () => {
    const square = { thicknessMm: 20, chamferDepthMm: 0, chamferWidthMm: 0 };
    expect(openShare(20, square, Math.PI / 4)).toBeCloseTo(0, 12);
    expect(openShare(20, { ...square, chamferDepthMm: 10, chamferWidthMm: 10 }, Math.PI / 4)).toBeCloseTo(
      0.5,
      12,
    );
    expect(openShare(20, { ...square, chamferDepthMm: 10, chamferWidthMm: 5 }, Math.PI / 4)).toBeCloseTo(
      0.25,
      12,
    );
    // Square hides 20 tan θ, sloped 10 tan θ: they differ by a tenth of 20 mm at tan θ = 0.2.
    const differ = angleOfDifference(20, square, { ...square, chamferDepthMm: 10, chamferWidthMm: 10 }, 0.1);
    expect(Math.tan(differ as number)).toBeCloseTo(0.2, 9);
    expect(angleOfDifference(20, square, square, 0.1)).toBeUndefined();
  });
});

describe('edges.see-through', () => {
  test('gives the curve, and the angle where the chamfer gives most', () => {
    const output = outputOf(edgesSeeThrough, {
      openingWidthMm: 20,
      thicknessMm: 20,
      chamferDepthMm: 10,
      chamferWidthMm: 10,
      stepDeg: 1,
    });
    const gains = output.curve.map((each) => each.chamfered - each.square);
    expect(output.most.share).toBeGreaterThanOrEqual(Math.max(...gains) - 1e-12);
    expect(output.most).toMatchObject({ angleDeg: expect.closeTo(45, 9), share: expect.closeTo(0.5, 9) });
    expect(output.closesDeg.square).toBeCloseTo(45, 9);
    expect(output.differsFromDeg).toBeCloseTo((Math.atan(0.2) * 180) / Math.PI, 9);
  });

  test.each<[object, string, string]>([
    [{ openingWidthMm: -2, thicknessMm: 10 }, 'openingWidthMm', 'above 0'],
    [
      { openingWidthMm: 20, thicknessMm: 10, chamferDepthMm: 12, chamferWidthMm: 3 },
      'chamferDepthMm',
      'deeper than',
    ],
    [{ openingWidthMm: 20, thicknessMm: 10, chamferDepthMm: 4 }, 'chamferWidthMm', 'or neither'],
  ])('%o', (asked, path, words) => {
    const result = edgesSeeThrough.answer(asked, context);
    if (result.ok) throw new Error('no fault');
    const { faults } = result;
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ path, message: expect.stringContaining(words) });
  });
});
