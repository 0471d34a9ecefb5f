import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mean, median, quantile, sum } from './statistics.ts';

const rows = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 });

// Quartiles of 1 … 4 by type 7: 1.75, 2.5, 3.25 (Hyndman and Fan’s rule, reckoned by hand).
it('agrees with what is reckoned by hand', () => {
  expect([0, 0.25, 0.5, 0.75, 1].map((share) => quantile([1, 2, 3, 4], share))).toEqual([
    1, 1.75, 2.5, 3.25, 4,
  ]);
  expect([sum([1, 2, 4]), mean([1, 2, 6]), median([9, 1, 5]), median([10, 1, 4, 3])]).toEqual([7, 3, 5, 3.5]);
  expect([sum([]), mean([]), median([]), quantile([], 0.5)]).toEqual([0, Number.NaN, Number.NaN, Number.NaN]);
  expect([mean(Float32Array.of(1, 2)), median(Float64Array.of(3, 1, 2))]).toEqual([1.5, 2]);
});

it('has as many values below the median as above it, and lets nothing that is no number pass for one', () => {
  fc.assert(
    fc.property(rows, (values) => {
      const middle = median(values);
      const [below, above] = [values.filter((each) => each < middle), values.filter((each) => each > middle)];
      expect(Math.max(below.length, above.length)).toBeLessThanOrEqual(values.length / 2);
      const rising = [...values].sort((a, b) => a - b);
      expect(quantile(rising, 0.5)).toBeCloseTo(middle, 6);
      expect(mean([...values, Number.NaN])).toBeNaN();
    }),
  );
});
