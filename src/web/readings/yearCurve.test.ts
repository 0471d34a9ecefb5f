import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curvePath, standsApart, yearsWorthDrawing, yearTicks } from './yearCurve.ts';

describe('the curve of years', () => {
  it('draws from whole quarter century to whole quarter century', () => {
    expect(
      yearsWorthDrawing([
        {
          density: [
            [1600, 0.0001],
            [1735, 0.4],
            [1760, 0.6],
          ],
          p90: [1735, 1764],
        },
      ]),
    ).toEqual([1725, 1775]);
    expect(yearTicks([1725, 1775], 6)).toEqual([1725, 1750, 1775]);
    expect(yearTicks([1600, 2025], 5)).toEqual([1600, 1700, 1800, 1900, 2000]);
  });

  it('leaves out a tail too low to be seen, but nothing of the nine tenths', () => {
    const density: [number, number][] = [
      [1785, 0.6],
      [1790, 0.37],
      [1880, 0.004],
      [1990, 0.002],
    ];
    expect(yearsWorthDrawing([{ density, p90: [1785, 1794] }])).toEqual([1775, 1800]);
    expect(yearsWorthDrawing([{ density, p90: [1785, 1884] }])).toEqual([1775, 1900]);
  });

  it('closes at the foot, and stays under its height (property)', () => {
    const bins = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 30 });
    fc.assert(
      fc.property(bins, (shares) => {
        const density = shares.map((share, index): [number, number] => [1700 + 5 * index, share]);
        const path = curvePath(density, (year) => year - 1700, { y: 40, height: 40, most: 1 });
        if (path === '') return;
        expect(path.endsWith('V40Z')).toBe(true);
        for (const [, y] of path.matchAll(/V([\d.]+)/g)) expect(Number(y) >= 0 && Number(y) <= 40).toBe(true);
      }),
      { seed: 9 },
    );
  });

  it('falls to the foot where years are left out between', () => {
    const path = curvePath(
      [
        [1700, 0.5],
        [1705, 0],
        [1710, 0.5],
      ],
      (year) => year - 1700,
      { y: 10, height: 10, most: 1 },
    );
    expect(path).toBe('M0 10V5H5V10H10V5H15V10Z');
  });

  it('says where a part’s years and the piece’s have nothing in common', () => {
    expect(standsApart({ p90: [1740, 1790] }, { p90: [1860, 1900] })).toBe('later than the piece');
    expect(standsApart({ p90: [1860, 1900] }, { p90: [1740, 1790] })).toBe('older than the piece');
    expect(standsApart({ p90: [1740, 1790] }, { p90: [1780, 1900] })).toBeUndefined();
  });
});
