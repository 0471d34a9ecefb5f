import { describe, expect, it } from 'vitest';
import { ratioCalibration } from './ratioCalibration.ts';

// Worked by hand after the definition: a ratio λ costs log2(1 + 1/λ) where true and log2(1 + λ) where false, each side's mean, halved.
describe('the cost of likelihood ratios', () => {
  it('is split into that of their order and that of their scale', () => {
    // e : 1 for what was true twice of three, for what was false once of three.
    const found = ratioCalibration([1, -1, 1], [-1, 1, -1]);
    const cost = (2 * Math.log2(1 + 1 / Math.E) + Math.log2(1 + Math.E)) / 3;
    expect(found?.cllr).toBeCloseTo(cost, 12);
    // The best scale says 2 : 1 and 1 : 2, as often as it was so.
    expect(found?.pooled).toEqual([
      { logRatio: -1, posterior: expect.closeTo(1 / 3, 12) },
      { logRatio: 1, posterior: expect.closeTo(2 / 3, 12) },
    ]);
    expect(found?.cllrMin).toBeCloseTo((2 * Math.log2(1.5) + Math.log2(3)) / 3, 12);
    expect(found?.misleading.whenTrue).toBeCloseTo(1 / 3, 12);
    expect(found?.misleading.whenFalse).toBeCloseTo(1 / 3, 12);
  });

  it('is nothing by order where the true stand above the false, however their scale', () => {
    const found = ratioCalibration([3, 2.5], [2, 0.5, 1]);
    expect(found?.pooled.map(({ logRatio, posterior }) => [logRatio, posterior])).toEqual([
      [0.5, 0],
      [1, 0],
      [2, 0],
      [2.5, 1],
      [3, 1],
    ]);
    expect(found?.cllrMin).toBe(0);
    expect(found?.misleading).toEqual({ whenTrue: 0, whenFalse: 1 });
  });

  it('says nothing by order where it is the wrong way around', () => {
    // One true below two false: pooled, one in three throughout, which is what it was before: 1 : 2 over 1 : 2 says nothing.
    const found = ratioCalibration([-1], [1, 1]);
    expect(found?.pooled).toEqual([
      { logRatio: -1, posterior: expect.closeTo(1 / 3, 12) },
      { logRatio: 1, posterior: expect.closeTo(1 / 3, 12) },
    ]);
    expect(found?.cllrMin).toBeCloseTo(1, 12);
    expect(found?.cllr).toBeCloseTo(Math.log2(1 + Math.E), 12);
    expect(found?.misleading).toEqual({ whenTrue: 1, whenFalse: 1 });
  });

  it('pools by the number of cases at each ratio, many beside few', () => {
    // At 0 one true of four, at 1 none of one: pooled one of five; at 2 all of one.
    const found = ratioCalibration([0, 2], [0, 0, 0, 1]);
    expect(found?.pooled.map(({ posterior }) => posterior)).toEqual([
      expect.closeTo(0.2, 12),
      expect.closeTo(0.2, 12),
      1,
    ]);
    // A ratio of 1 : 1 misleads nobody.
    expect(found?.misleading).toEqual({ whenTrue: 0, whenFalse: 0.25 });
  });

  it('is not defined where a side has no case', () => {
    expect(ratioCalibration([], [1])).toBeUndefined();
    expect(ratioCalibration([1], [])).toBeUndefined();
  });
});
