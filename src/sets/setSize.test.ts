import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sum } from '../ground/statistics.ts';
import { setSize } from './setSize.ts';

const seed = 1771;
const numbers = fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 2, maxLength: 8 });

/** C(n, k) in whole numbers, so that the test shares no arithmetic with what it tests. */
function choose(n: number, k: number): bigint {
  let value = 1n;
  for (let i = 1; i <= k; i++) value = (value * BigInt(n - k + i)) / BigInt(i);
  return value;
}

describe('the size of a set', () => {
  test('weighs every size by one over the number of ways to draw from it', () => {
    fc.assert(
      fc.property(numbers, fc.integer({ min: 0, max: 60 }), (seen, more) => {
        const m = Math.max(...seen);
        const { posterior } = setSize(seen, { max: m + more });
        const first = posterior[0]?.[1] as number;
        for (const [n, p] of posterior) {
          const ratio = Number((choose(m, seen.length) * 10n ** 15n) / choose(n, seen.length)) / 1e15;
          expect(Math.abs(p / first - ratio)).toBeLessThan(1e-11);
        }
      }),
      { seed },
    );
  });

  test('shares sum to 1, the middle lies within the nine tenths, and nothing is smaller than a number seen', () => {
    fc.assert(
      fc.property(numbers, fc.option(fc.integer({ min: 60, max: 500 }), { nil: undefined }), (seen, max) => {
        const { posterior, listed, median, p90 } = setSize(seen, max === undefined ? undefined : { max });
        const sum = posterior.reduce((total, [, p]) => total + p, 0);
        expect(sum).toBeCloseTo(listed, 10);
        if (max !== undefined) expect(sum).toBeCloseTo(1, 10);
        else if (posterior.length < 2000) expect(listed).toBeGreaterThanOrEqual(0.99 - 1e-9);
        expect(posterior[0]?.[0]).toBe(Math.max(...seen));
        expect(p90[0]).toBeLessThanOrEqual(median);
        expect(median).toBeLessThanOrEqual(p90[1]);
      }),
      { seed },
    );
  });

  test('without a largest size the closed form of the tail holds: P(N ≤ n) = 1 − C(m−1, k−1)/C(n, k−1)', () => {
    fc.assert(
      fc.property(numbers, (seen) => {
        const [m, k] = [Math.max(...seen), seen.length];
        let held = 0;
        for (const [n, p] of setSize(seen).posterior) {
          held += p;
          const beyond = Number((choose(m - 1, k - 1) * 10n ** 15n) / choose(n, k - 1)) / 1e15;
          expect(Math.abs(held - (1 - beyond))).toBeLessThan(1e-10);
        }
      }),
      { seed, numRuns: 40 },
    );
  });

  test('with an unknown first number every place of the run over the numbers counts', () => {
    fc.assert(
      fc.property(numbers, fc.integer({ min: 0, max: 40 }), (seen, more) => {
        const range = Math.max(...seen) - Math.min(...seen);
        const { posterior } = setSize(seen, { max: range + 1 + more }, 'unknown');
        // Counted out: each size and each first number that lets the run hold the numbers, one over its draws each.
        const counted = posterior.map(([n]) => {
          let places = 0;
          for (let first = -200; first <= 200; first++)
            if (first <= Math.min(...seen) && first + n - 1 >= Math.max(...seen)) places++;
          return places / Number(choose(n, seen.length));
        });
        const total = sum(counted);
        posterior.forEach(([, p], index) => {
          expect(Math.abs(p - (counted[index] as number) / total)).toBeLessThan(1e-11);
        });
      }),
      { seed },
    );
  });

  test('its endless form is where ever larger priors lead', () => {
    const endless = setSize([112, 119, 131, 140], undefined, 'unknown');
    const large = setSize([112, 119, 131, 140], { max: 100_000 }, 'unknown');
    expect(endless.median).toBe(large.median);
    expect(endless.p90).toEqual(large.p90);
    expect(endless.posterior[0]?.[1]).toBeCloseTo(large.posterior[0]?.[1] as number, 7);
  });

  test('a very large prior comes to the endless one', () => {
    const endless = setSize([3, 7, 11, 4]);
    const large = setSize([3, 7, 11, 4], { max: 50_000 });
    expect(large.median).toBe(endless.median);
    expect(large.p90).toEqual(endless.p90);
  });

  test('the order of the numbers and of the sizes does not matter', () => {
    const sizes = [[12, 0.5], [6, 0.2], [24, 0.3]] as const; // biome-ignore format: a table
    expect(setSize([5, 2], { sizes })).toEqual(setSize([2, 5], { sizes: [...sizes].reverse() }));
  });

  test('slips of the programmer throw', () => {
    expect(() => setSize([])).toThrow(RangeError);
    expect(() => setSize([4])).toThrow(RangeError);
    expect(() => setSize([4, 4])).toThrow(RangeError);
    expect(() => setSize([9], { max: 8 })).toThrow(RangeError);
  });
});
