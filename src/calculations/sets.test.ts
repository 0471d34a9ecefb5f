import { describe, expect, test } from 'vitest';
import reference from '../../test/reference/setSizes.json' with { type: 'json' };
import { mean } from '../ground/statistics.ts';
import type { CalculationContext } from './define.ts';
import { runById } from './runById.ts';
import { setsSize } from './sets.ts';
import { outputOf } from './testing/outputOf.ts';

// Values and their sources: test/reference/setSizes.json.

const context = { yearNow: 2026 } as CalculationContext;
const size = (input: object) => outputOf(setsSize, input);

describe('values from outside', () => {
  test.each(reference.sizes)('$id', ({ input, expected, tolerance }) => {
    const found = size(input);
    const near = (value: number | undefined | null, wanted: number, what: string) =>
      expect(Math.abs((value as number) - wanted), what).toBeLessThanOrEqual(tolerance * Math.max(1, wanted));
    const wanted = expected as {
      unbiased?: number;
      mean?: number;
      median?: number;
      lower5?: number;
      upper95?: number;
    };
    if (wanted.unbiased !== undefined) near(found.unbiased, wanted.unbiased, 'unbiased');
    if (wanted.mean !== undefined) near(found.mean, wanted.mean, 'mean');
    if (wanted.median !== undefined) expect(found.median).toBe(wanted.median);
    if (wanted.lower5 !== undefined) expect(found.p90[0]).toBe(wanted.lower5);
    if (wanted.upper95 !== undefined) expect(found.p90[1]).toBe(wanted.upper95);
    const byN = new Map(found.posterior);
    for (const [n, p] of (expected.posterior ?? []) as [number, number][]) near(byN.get(n), p, `P(${n})`);
  });

  test('the estimate with an unknown first number is right on average, wherever the run lies', () => {
    for (const { N, k } of reference.everySampleFirstUnknown.cases) {
      const estimates = samples(N, k).map(
        (seen) =>
          size({ numbersSeen: seen.map((each) => each + 100), first: 'unknown', prior: { max: 50 } })
            .unbiased,
      );
      const average = mean(estimates);
      expect(Math.abs(average - N)).toBeLessThan(reference.everySampleFirstUnknown.tolerance);
    }
  });

  test('the estimate is right on average: every sample of 3 from 10', () => {
    const { N, k, variance, tolerance, ...known } = reference.everySample;
    const estimates = samples(N, k).map((numbersSeen) => size({ numbersSeen }).unbiased);
    expect(estimates).toHaveLength(120);
    const average = mean(estimates);
    const spread = estimates.reduce((sum, each) => sum + (each - average) ** 2, 0) / estimates.length;
    expect(Math.abs(average - known.mean)).toBeLessThan(tolerance);
    expect(Math.abs(spread - variance)).toBeLessThan(1e-9);
  });
});

function samples(N: number, k: number, from = 1): number[][] {
  if (k === 0) return [[]];
  return Array.from({ length: N - from + 1 }, (_, index) => from + index).flatMap((first) =>
    samples(N, k - 1, first + 1).map((rest) => [first, ...rest]),
  );
}

describe('bad input gives one plain sentence that says what to do', () => {
  test.each<[object, string, string]>([
    [{ numbersSeen: [] }, 'numbersSeen', 'at least 1 entry'],
    [{ numbersSeen: [0, 4] }, 'numbersSeen[0]', 'at least 1'],
    [{ numbersSeen: [4.5] }, 'numbersSeen[0]', 'a whole number'],
    [{ numbersSeen: [4, 7, 4] }, 'numbersSeen[2]', 'weigh the two sets apart'],
    [{ numbersSeen: [8] }, 'prior', 'give the largest size you think possible'],
    [{ numbersSeen: [112, 119], first: 'unknown' }, 'prior', 'Fewer than three'],
    [{ numbersSeen: [112], first: 'unknown', prior: { max: 24 } }, 'numbersSeen', 'give two or more'],
    [{ numbersSeen: [112, 140], first: 'unknown', prior: { max: 24 } }, 'prior.max', 'at least 29'],
    [{ numbersSeen: [3, 12], prior: { max: 8 } }, 'prior.max', 'give a size of at least 12'],
    [{ numbersSeen: [3, 12], prior: { sizes: [{ n: 6, p: 1 }, { n: 12, p: 0 }] } }, 'prior.sizes', 'at least 12'], // biome-ignore format: a row
    [{ numbersSeen: [3, 12], prior: { sizes: [{ n: 12, p: 1 }, { n: 12, p: 2 }] } }, 'prior.sizes', 'each size once'], // biome-ignore format: a row
  ])('%o', (input, path, words) => {
    const result = runById('sets.size', input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
