import { describe, expect, test } from 'vitest';
import published from '../../test/reference/bayes.json' with { type: 'json' };
import { bitsOf, decibans, decibansOfNats, natsOf } from './decibans.ts';

const { decibans: scale, loadedDie: die } = published;

describe('conversions (Good 1950; test/reference/bayes.json)', () => {
  test.each(scale.likelihoodRatios.map((ratio, index) => [ratio, index] as const))(
    'a ratio of %d',
    (ratio, index) => {
      expect(decibans(ratio)).toBeCloseTo(scale.decibans[index] as number, 11);
      expect(bitsOf(ratio)).toBeCloseTo(scale.bits[index] as number, 11);
      expect(natsOf(ratio)).toBeCloseTo(scale.nats[index] as number, 11);
      expect(decibansOfNats(natsOf(ratio))).toBeCloseTo(decibans(ratio), 11);
    },
  );

  test('what is no ratio is a programmer’s slip', () => {
    expect(() => decibans(-1)).toThrow(RangeError);
    expect(() => decibans(Number.NaN)).toThrow(RangeError);
    expect(decibans(0)).toBe(Number.NEGATIVE_INFINITY);
  });
});

test('the loaded die', () => {
  const [loaded, fair] = [1 / 3, 1 / 6];
  const perSix = decibans(loaded / fair);
  const perOther = decibans((1 - loaded) / (1 - fair));
  const total = die.sixes * perSix + die.others * perOther;
  const posterior = decibans(die.startingProbability / (1 - die.startingProbability)) + total;
  expect(perSix).toBeCloseTo(die.expected.decibansPerSix, 9);
  expect(perOther).toBeCloseTo(die.expected.decibansPerOther, 9);
  expect(total).toBeCloseTo(die.expected.totalDecibans, 9);
  expect(posterior).toBeCloseTo(die.expected.posteriorDecibans, 9);
  const odds = 10 ** (posterior / 10);
  expect(odds / (1 + odds)).toBeCloseTo(die.expected.posteriorProbability, 9);
});
