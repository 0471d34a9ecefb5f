import { describe, expect, it } from 'vitest';
import { yearAxis } from '../evidence/yearAxis.ts';
import { yearSummary } from './highestDensity.ts';

// Worked by hand: bins of ten years from 1700 on.
const years = (shares: readonly number[], lastYear = 2000) =>
  yearSummary(yearAxis(1700, 1699 + 10 * shares.length, 10), Float64Array.from(shares), lastYear);

describe('the shortest spans of years', () => {
  it('take the most probable bins until they hold half, and 90 in 100', () => {
    const { p50, p90, density } = years([1, 4, 10, 4, 1]);
    expect(p50).toEqual([1720, 1729]);
    expect(p90).toEqual([1710, 1739]);
    expect(density).toEqual([
      [1705, 0.05],
      [1715, 0.2],
      [1725, 0.5],
      [1735, 0.2],
      [1745, 0.05],
    ]);
  });

  it('take the earlier of two bins alike, and span the gap between bins that do not touch', () => {
    expect(years([3, 4, 3]).p50).toEqual([1700, 1719]);
    expect(years([6, 0, 0, 4])).toMatchObject({ p50: [1700, 1709], p90: [1700, 1739] });
  });

  it('are drawn no further by a rounding error: nine tenths are nine of ten bins alike', () => {
    expect(years(Array(10).fill(0.1)).p90).toEqual([1700, 1789]);
  });

  it('end with the last year there is', () => {
    expect(years([1, 8, 1], 1715)).toMatchObject({ p50: [1710, 1715] });
  });

  it('are all the years where nothing is left', () => {
    const { p50, p90, density } = years([0, 0, 0]);
    expect([p50, p90]).toEqual([
      [1700, 1729],
      [1700, 1729],
    ]);
    expect(density.map(([, share]) => share)).toEqual([0, 0, 0]);
  });
});
