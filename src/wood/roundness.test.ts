import { describe, expect, test } from 'vitest';
import { normalDraw, seededRandom } from '../ground/seededRandom.ts';
import { mean, sum } from '../ground/statistics.ts';
import { expectedOutOfRound, outOfRoundRatio, type RoundPart, type Spread } from './roundness.ts';

const part: RoundPart = {
  alongMm: 900,
  coefficient: { mean: 0.0025, sd: 0.0004 },
  moistureNow: { mean: 8, sd: 1 },
  madeMm: 1.2,
  sigmaMm: 0.7,
  otherCauses: { share: 0.04, sdMm: 13 },
};
const old: Spread = { mean: 15, sd: 2 };
const recent: Spread = { mean: 7, sd: 1 };

/** Differences drawn from the story itself: moistures, wood, making, measuring. */
function drawn(count: number, atMaking: Spread): number[] {
  const next = seededRandom(1790);
  const normal = ({ mean, sd }: Spread) => mean + sd * normalDraw(next);
  return Array.from({ length: count }, () => {
    const moved = part.alongMm * normal(part.coefficient) * (normal(atMaking) - normal(part.moistureNow));
    const madeAndMeasured = [part.madeMm, part.sigmaMm, part.sigmaMm].map((sd) => normal({ mean: 0, sd }));
    return moved + sum(madeAndMeasured);
  });
}

describe('the expected difference', () => {
  test.each([old, recent])('agrees with 200,000 drawn parts: moisture at making %o', (atMaking) => {
    const found = expectedOutOfRound(part, atMaking);
    const sample = drawn(200_000, atMaking);
    const average = mean(sample);
    const sd = Math.sqrt(sample.reduce((sum, each) => sum + (each - average) ** 2, 0) / sample.length);
    // Four standard errors of each.
    expect(Math.abs(found.meanMm - average)).toBeLessThan((4 * sd) / Math.sqrt(sample.length));
    expect(Math.abs(found.sdMm - sd)).toBeLessThan((4 * sd) / Math.sqrt(2 * sample.length));
  });

  test('grows with the part, and scales with it when nothing else does', () => {
    const bare = { ...part, madeMm: 0, sigmaMm: 0 };
    const one = expectedOutOfRound(bare, old);
    const two = expectedOutOfRound({ ...bare, alongMm: 1800 }, old);
    expect(two.meanMm).toBeCloseTo(2 * one.meanMm, 9);
    expect(two.sdMm).toBeCloseTo(2 * one.sdMm, 9);
  });
});

describe('the ratio', () => {
  test('agrees with how often drawn parts fall near a difference', () => {
    const plain = { ...part, otherCauses: { share: 0, sdMm: 13 } };
    const [olds, recents] = [drawn(200_000, old), drawn(200_000, recent)];
    for (const at of [0, 3, 6]) {
      const near = (sample: number[]) => sample.filter((each) => Math.abs(each - at) < 0.5).length;
      const counted = near(olds) / near(recents);
      const error = counted * Math.sqrt(1 / near(olds) + 1 / near(recents));
      expect(Math.abs(outOfRoundRatio(plain, at, old, recent) - counted), String(at)).toBeLessThan(
        4 * error + 0.01 * counted,
      );
    }
  });

  test('is the same with ten times the steps', () => {
    for (const at of [-20, 0, 10, 30]) {
      const [coarse, fine] = [280, 2800].map((steps) => outOfRoundRatio(part, at, old, recent, steps));
      expect(Math.abs((coarse as number) / (fine as number) - 1)).toBeLessThan(1e-9);
    }
  });

  test('turned about is one over itself', () => {
    const there = outOfRoundRatio(part, 9, old, recent);
    expect(there * outOfRoundRatio(part, 9, recent, old)).toBeCloseTo(1, 12);
  });

  test('stays within bounds however far the diameters differ', () => {
    for (const at of [-180, -60, 60, 180]) {
      const ratio = outOfRoundRatio(part, at, old, recent);
      expect(ratio).toBeGreaterThan(1e-3);
      expect(ratio).toBeLessThan(1e3);
    }
    // So far out only other causes are left, and they tell nothing.
    expect(outOfRoundRatio(part, 100, old, recent)).toBeCloseTo(1, 2);
  });
});
