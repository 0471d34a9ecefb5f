import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import reference from '../../test/reference/dating.json' with { type: 'json' };
import { datingSpan, type NamedSign } from './datingSpan.ts';
import { highestDensity } from './highestDensity.ts';
import { massBetween, type YearCurve, yearAtShare, yearCurve } from './yearCurve.ts';

const seed = 1785;
const years: [number, number] = [1600, 2027];

type Reference = {
  input: { signs: { introduced: object; phasedOut: object; weight?: number }[]; combine?: string };
  expected: { quantiles?: [number, number][]; bins?: { edges: number[]; shares: number[] } };
  tolerance: number;
};
const curves = (reference.spans as unknown as (Reference & { id: string })[]).filter(
  ({ expected }) => expected.quantiles !== undefined || expected.bins !== undefined,
);

function massIn(curve: YearCurve, from: number, to: number): number {
  return curve.masses.reduce((sum, _, cell) => {
    const start = Math.max(from, curve.edges[cell] as number);
    const end = Math.min(to, curve.edges[cell + 1] as number);
    return start < end ? sum + massBetween(curve, cell, start, end) : sum;
  }, 0);
}

test.each(curves)('quantiles and shares of $id', ({ input, expected, tolerance }) => {
  const signs = input.signs.map(({ introduced, phasedOut }) => ({ ...introduced, ...phasedOut }));
  const weights = input.signs.map(({ weight }) => weight ?? 1);
  const curve = yearCurve(signs, years, input.combine === 'sum' ? { way: 'sum', weights } : undefined);
  if (curve === undefined) throw new Error('no year');
  for (const [share, year] of expected.quantiles ?? [])
    expect(Math.abs(yearAtShare(curve, share) - year), String(share)).toBeLessThan(tolerance);
  const { edges = [], shares = [] } = expected.bins ?? {};
  shares.forEach((share, bin) => {
    expect(Math.abs(massIn(curve, edges[bin] as number, edges[bin + 1] as number) - share)).toBeLessThan(
      tolerance,
    );
  });
});

const sign = fc
  .tuple(
    fc.integer({ min: 1650, max: 1760 }),
    fc.array(fc.integer({ min: 0, max: 70 }), { minLength: 3, maxLength: 3 }),
  )
  .map(([earliest, [rise = 0, flat = 0, fade = 0]]): NamedSign => {
    const commonFrom = earliest + rise;
    const commonUntil = commonFrom + flat;
    return { name: `${earliest}`, earliest, commonFrom, commonUntil, latest: commonUntil + fade + 1 };
  });
const signs = fc.array(sign, { minLength: 1, maxLength: 5 });

describe('properties', () => {
  test('the intervals hold what they say, the half within the nine tenths, and no shorter one holds as much', () => {
    fc.assert(
      fc.property(signs, fc.double({ min: -5, max: 5, noNaN: true }), (each, shift) => {
        const curve = yearCurve(each, years);
        if (curve === undefined) return;
        const [half, most] = [highestDensity(curve, 0.5), highestDensity(curve, 0.9)];
        expect(massIn(curve, ...half)).toBeCloseTo(0.5, 5);
        expect(massIn(curve, ...most)).toBeCloseTo(0.9, 5);
        expect(most[0]).toBeLessThanOrEqual(half[0] + 1e-6);
        expect(most[1]).toBeGreaterThanOrEqual(half[1] - 1e-6);
        expect(massIn(curve, most[0] + shift, most[1] + shift)).toBeLessThanOrEqual(0.9 + 1e-5);
      }),
      { seed, numRuns: 60 },
    );
  });

  test('the order of the signs does not matter, and a sign that says nothing moves nothing', () => {
    fc.assert(
      fc.property(signs, (each) => {
        const found = datingSpan(each, years);
        const turned = datingSpan([...each].reverse(), years);
        const more = datingSpan([...each, { name: 'always' }], years);
        expect(found.possible).toBe(turned.possible);
        if (!found.possible || !turned.possible || !more.possible) return;
        for (const other of [turned, more]) {
          expect(other.mean).toBeCloseTo(found.mean, 6);
          expect(other.p90[0]).toBeCloseTo(found.p90[0], 5);
          expect(other.p90[1]).toBeCloseTo(found.p90[1], 5);
        }
      }),
      { seed, numRuns: 30 },
    );
  });

  test('where no year is left, each pair named really leaves none', () => {
    let met = 0;
    fc.assert(
      fc.property(fc.array(sign, { minLength: 2, maxLength: 6 }), (each) => {
        const found = datingSpan(each, years);
        if (found.possible) return;
        met++;
        expect(found.conflicts.length).toBeGreaterThan(0);
        for (const { from, to } of found.conflicts) expect(from).toBeGreaterThanOrEqual(to);
      }),
      { seed, numRuns: 80 },
    );
    expect(met).toBeGreaterThan(3);
  }, 60_000);

  test('a sum with two humps spans the gap between them', () => {
    const hump = (from: number): NamedSign => ({ name: `${from}`, earliest: from, latest: from + 10 });
    const curve = yearCurve([hump(1700), hump(1800)], years, { way: 'sum', weights: [1, 1] });
    if (curve === undefined) throw new Error('no year');
    const [from, to] = highestDensity(curve, 0.9);
    expect(from).toBeCloseTo(1701, 6);
    expect(to).toBeCloseTo(1809, 6);
  });
});
