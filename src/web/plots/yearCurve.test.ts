import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { densityPath } from './densityPath.ts';
import { yearScale, yearsWorthDrawing, yearTicks } from './yearAxis.ts';

describe('the curve of years', () => {
  it('draws from whole quarter century to whole quarter century', () => {
    expect(
      yearsWorthDrawing(
        [
          {
            density: [
              [1600, 0.0001],
              [1735, 0.4],
              [1760, 0.6],
            ],
            p90: [1735, 1764],
          },
        ],
        5,
      ),
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
    expect(yearsWorthDrawing([{ density, p90: [1785, 1794] }], 5)).toEqual([1775, 1800]);
    expect(yearsWorthDrawing([{ density, p90: [1785, 1884] }], 5)).toEqual([1775, 1900]);
  });

  it('closes at the foot, and stays under its height (property)', () => {
    const bins = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 30 });
    fc.assert(
      fc.property(bins, (shares) => {
        const density = shares.map((share, index): [number, number] => [1700 + 5 * index, share]);
        const path = densityPath(density, 5, yearScale([1700, 1850], 150), [40, 0]);
        if (path === '') return;
        expect(path).toMatch(/^M0,[\d.]+L.*L0,40Z$/);
        const places = [...path.matchAll(/([\d.]+),([\d.]+)/g)];
        for (const [, x, y] of places)
          expect(Number(x) <= 150 && Number(y) >= 0 && Number(y) <= 40).toBe(true);
        expect(Math.min(...places.map(([, , y]) => Number(y)))).toBe(0);
      }),
      { seed: 9 },
    );
  });

  it('falls to the foot where years are left out between', () => {
    const density = [
      [1700, 0.5],
      [1705, 0],
      [1720, 0.5],
    ] as const;
    const path = densityPath(density, 5, yearScale([1700, 1725], 25), [10, 0]);
    // There and back: up to the share for five years, down to the foot, up again after ten years of nothing.
    const corners = path
      .slice(1, -1)
      .split('L')
      .filter((each, index, all) => each !== all[index - 1]);
    expect(corners.slice(0, 7)).toEqual(['0,0', '5,0', '5,10', '10,10', '20,10', '20,0', '25,0']);
    expect(corners.slice(7).every((each) => each.endsWith(',10'))).toBe(true);
  });

  it('slopes from year to year where it is told to, the highest at the top', () => {
    const across = yearScale([1800, 1875], 300);
    const density = [
      [1800, 0],
      [1840, 0.02],
      [1875, 0],
    ] as const;
    expect(densityPath(density, 'sloping', across, [100, 0])).toBe(
      'M0,100L160,0L300,100L300,100L160,100L0,100Z',
    );
  });
});
