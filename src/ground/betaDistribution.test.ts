import { expect, test } from 'vitest';
import { betaOfRange, betaQuantile, incompleteBeta } from './betaDistribution.ts';

test('percentiles that can be written down: Beta(1, b), Beta(a, 1) and the cubic of Beta(2, 2)', () => {
  expect(betaQuantile([1, 4], 0.05)).toBeCloseTo(1 - 0.95 ** (1 / 4), 8);
  expect(betaQuantile([3, 1], 0.95)).toBeCloseTo(0.95 ** (1 / 3), 8);
  // 3x² − 2x³ at x = 0.2 is 0.104.
  expect(incompleteBeta(0.2, 2, 2)).toBeCloseTo(0.104, 12);
  expect(betaQuantile([2, 2], 0.104)).toBeCloseTo(0.2, 8);
  expect(() => betaQuantile([2, 2], 0)).toThrow(RangeError);
});

test('the shapes of a range: worked on paper for 50, 30–70', () => {
  // Standard deviation 0.4 / 3.29 = 0.12158; size 0.25 / 0.014782 − 1 = 15.913; half of it each.
  const shapes = betaOfRange({ best: 0.5, low: 0.3, high: 0.7 });
  expect(shapes?.[0]).toBeCloseTo(7.956, 3);
  expect(shapes?.[1]).toBeCloseTo(7.956, 3);
  expect(betaOfRange({ best: 0.5, low: 0.5, high: 0.5 })).toBeUndefined();
});
