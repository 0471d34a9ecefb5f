import { describe, expect, it } from 'vitest';
import { totalWeight } from './totalWeight.ts';

const even = {
  name: 'Even',
  period: 50,
  'bench-copy': 25,
  'machine-copy': 20,
  'to-deceive': 5,
  why: 'For a check.',
};
const sceptical = { ...even, name: 'Skeptical', period: 10, 'bench-copy': 45, 'machine-copy': 40 };
const making = { startingOdds: { even, sceptical }, defaultOdds: 'even' };

function readings(period: number) {
  return {
    readings: [
      { id: 'period-intact', probability: period * 0.7, low: 0, high: 1 },
      { id: 'made-up', probability: period * 0.3, low: 0, high: 1 },
      { id: 'later-bench-copy', probability: 1 - period, low: 0, high: 1 },
    ] as never,
  };
}

describe('the weight of all findings together', () => {
  it('is nothing where the odds have not moved', () => {
    expect(totalWeight(readings(0.5), making, 'even')?.decibans).toBeCloseTo(0, 9);
    expect(totalWeight(readings(0.1), making, 'sceptical')?.decibans).toBeCloseTo(0, 9);
  });

  it('is ten decibans where the odds have become ten times what they were (Good 1950, from memory)', () => {
    expect(totalWeight(readings(10 / 11), making, undefined)?.decibans).toBeCloseTo(10, 9);
    expect(totalWeight(readings(1 / 11), making, 'even')?.decibans).toBeCloseTo(-10, 9);
  });

  it('adds up the readings of each side', () => {
    const four = {
      readings: [
        { id: 'period-repaired', probability: 0.3 },
        { id: 'period-altered', probability: 0.3 },
        { id: 'later-machine-copy', probability: 0.04 },
        { id: 'made-to-deceive', probability: 0.02 },
      ] as never,
    };
    // 0.6 : 0.06, from even odds.
    expect(totalWeight(four, making, 'even')?.decibans).toBeCloseTo(10, 9);
    expect(totalWeight(readings(1), making, 'even')).toBeUndefined();
  });

  it('falls back on the usual odds where those chosen are not known, and on nothing where none are', () => {
    expect(totalWeight(readings(0.5), making, 'gone')?.decibans).toBeCloseTo(0, 9);
    expect(totalWeight(readings(0.5), { startingOdds: {}, defaultOdds: 'even' }, 'even')).toBeUndefined();
  });

  it('is a bound where one side ends at what can be printed', () => {
    const shown = {
      readings: [
        { id: 'later-machine-copy', probability: 0.999, low: 0, high: 1 },
        { id: 'period-intact', probability: 0.001, low: 0, high: 1 },
      ] as never,
    };
    expect(totalWeight(shown, making, 'even')?.atLeast).toBe(true);
    const some = (...probabilities: [string, number][]) => ({
      readings: probabilities.map(([id, probability]) => ({ id, probability, low: 0, high: 1 })) as never,
    });
    const atLeast = (...of: [string, number][]) => totalWeight(some(...of), making, 'even')?.atLeast;
    // A side of several readings, one of them at the end of what can be printed; and a small side where none is.
    expect(atLeast(['period-intact', 0.99], ['later-bench-copy', 0.001], ['to-deceive', 0.009])).toBe(true);
    expect(atLeast(['period-intact', 0.992], ['later-bench-copy', 0.004], ['made-to-deceive', 0.004])).toBe(
      false,
    );
    expect(atLeast(['period-intact', 0.999], ['later-bench-copy', 0.002])).toBe(true);
    expect(atLeast(['period-intact', 0.979], ['made-up', 0.001], ['later-bench-copy', 0.02])).toBe(false);
    expect(atLeast(['period-intact', 0.999], ['later-bench-copy', 0.02])).toBe(false);
    expect(totalWeight(readings(0.6), making, 'even')?.atLeast).toBe(false);
  });
});
