import { describe, expect, it } from 'vitest';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import { againstRest, massOf, strongestRival, weightBetween } from './logOdds.ts';

const nothing = Object.fromEntries(readingIds.map((id) => [id, 0])) as Record<ReadingId, number>;
const posterior = (readings: Partial<Record<ReadingId, number>>): Posterior => ({
  readings: { ...nothing, ...readings },
  total: 1,
  log: 0,
});

describe('what some readings weigh together', () => {
  it('is their sum, and nothing for none', () => {
    const some = posterior({ 'period-intact': 0.5, 'period-repaired': 0.25, 'made-to-deceive': 0.125 });
    expect(massOf(some, ['period-intact', 'period-repaired', 'made-to-deceive'])).toBe(0.875);
    expect(massOf(some, ['later-bench-copy'])).toBe(0);
    expect(massOf(some, [])).toBe(0);
  });

  it.each([
    ['period-repaired', ['period-intact']],
    ['period-altered', ['period-intact', 'period-repaired']],
    ['made-up', ['period-intact', 'period-repaired', 'period-altered']],
  ] as const)(
    'counts of %s nothing that is no more than the rounding of the sums before it',
    (left, before) => {
      for (const from of before) {
        // A millionth of a millionth of what it is what is left of.
        expect(massOf(posterior({ [from]: 1, [left]: 0.9e-12 }), [left])).toBe(0);
        expect(massOf(posterior({ [from]: 1, [left]: 1.1e-12 }), [left])).toBe(1.1e-12);
      }
      // By itself it is all there is, however small.
      expect(massOf(posterior({ [left]: 1e-20 }), [left])).toBe(1e-20);
    },
  );

  it('counts all of a reading that is summed by itself, however little', () => {
    const little = posterior({ 'period-intact': 1e-20, 'later-bench-copy': 1e-20, 'made-up': 1 });
    expect(massOf(little, ['period-intact', 'later-bench-copy'])).toBe(2e-20);
  });
});

describe('the strongest rival', () => {
  it('is the most probable of the others, of equal ones the earlier listed', () => {
    const odds = posterior({ 'period-intact': 0.2, 'made-up': 0.3, 'later-machine-copy': 0.3 });
    expect(strongestRival(odds, 'period-repaired')).toBe('made-up');
    expect(strongestRival(odds, 'made-up')).toBe('later-machine-copy');
    expect(strongestRival(posterior({ 'period-intact': 1 }), 'period-intact')).toBe('period-repaired');
  });
});

describe('a weight', () => {
  const even = posterior({ 'period-intact': 0.5, 'made-to-deceive': 0.5 });
  const tenToOne = posterior({ 'period-intact': 10, 'made-to-deceive': 0.5, 'made-up': 0.5 });
  const sides = againstRest('period-intact');

  it('is of one reading against all the others', () => {
    expect(sides.one).toEqual(['period-intact']);
    expect(sides.other).toEqual(readingIds.slice(1));
  });

  it('is ten times the logarithm of what becomes of the odds', () => {
    // From 1 : 1 to 10 : 1 is ten decibans; back is ten against.
    expect(weightBetween(tenToOne, even, sides)).toBeCloseTo(10, 12);
    expect(weightBetween(even, tenToOne, sides)).toBeCloseTo(-10, 12);
    expect(weightBetween(even, even, sides)).toBe(0);
  });

  it('is no number where a side has nothing, with it or without', () => {
    const sure = posterior({ 'period-intact': 1 });
    expect(weightBetween(sure, even, sides)).toBeNull();
    expect(weightBetween(even, sure, sides)).toBeNull();
    expect(weightBetween(sure, sure, sides)).toBeNull();
    expect(weightBetween(posterior({}), even, sides)).toBeNull();
  });
});
