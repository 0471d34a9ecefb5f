import { expect, it } from 'vitest';
import { seededRandom } from '../ground/seededRandom.ts';
import { mean } from '../ground/statistics.ts';
import { betaDraw } from './betaDraws.ts';

// Moments of the Beta distribution: mean a/(a+b), variance ab/((a+b)²(a+b+1)) (any handbook of distributions).
it.each([
  ['30, 20–40', 0.3, 0.2 / 3.29],
  ['98, 95–99', 0.98, 0.04 / 3.29],
  ['2, 0.5–8', 0.02, 0.075 / 3.29],
])('draws of %s have its best value as mean and the deviation of its range', (in100, best, deviation) => {
  const random = seededRandom(11);
  const values = Array.from({ length: 20000 }, () => betaDraw(random)({ in100 }));
  const average = mean(values);
  const spread = Math.sqrt(
    values.reduce((sum, each) => sum + (each - average) ** 2, 0) / (values.length - 1),
  );
  expect(Math.abs(average - best)).toBeLessThan((4 * deviation) / Math.sqrt(values.length));
  expect(Math.abs(spread / deviation - 1)).toBeLessThan(0.05);
  expect(Math.min(...values)).toBeGreaterThan(0);
  expect(Math.max(...values)).toBeLessThan(1);
});

it('gives the same draws for the same seed, others for another, and one draw per figure', () => {
  const figure = { in100: '40, 20–60' };
  const other = { in100: '40, 20–60' };
  const draw = betaDraw(seededRandom(5));
  expect(draw(figure)).toBe(draw(figure));
  expect(draw(figure)).not.toBe(draw(other));
  expect(betaDraw(seededRandom(5))(figure)).toBe(draw(figure));
  expect(betaDraw(seededRandom(6))(figure)).not.toBe(draw(figure));
});

it('spreads its numbers evenly', () => {
  const random = seededRandom(3);
  const counts = new Array<number>(10).fill(0);
  for (let i = 0; i < 10000; i++) {
    const tenth = Math.floor(random() * 10);
    counts[tenth] = (counts[tenth] ?? 0) + 1;
  }
  const chiSquare = counts.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
  // The 99.9 % point of chi-square with 9 degrees of freedom is 27.88 (any table).
  expect(chiSquare).toBeLessThan(27.88);
});
