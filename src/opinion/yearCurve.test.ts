import { describe, expect, it } from 'vitest';
import { yearCurve } from './yearCurve.ts';

const density = Array.from({ length: 86 }, (_, index): [number, number] => {
  const year = 1600 + index * 5;
  return [year, year >= 1760 && year < 1790 ? 1 / 6 : 0];
});

describe('the curve of the years', () => {
  it('says in words what it shows', () => {
    const curve = yearCurve({ density, p50: [1765, 1780], p90: [1760, 1790], examiner: [1770, 1785] });
    expect(curve.alternative).toContain('very probable (90 in 100): 1760–1790');
    expect(curve.alternative).toContain('about an even chance (50 in 100): 1765–1780');
    expect(curve.alternative).toContain('The examiner concludes on 1770–1785.');
    expect(curve.caption).toContain('bracket');
  });

  it('stays within its own field, whatever years are marked', () => {
    for (const examiner of [
      [1500, 1510],
      [1770, 1770],
      [2020, 2030],
    ] as const) {
      const { svg } = yearCurve({ density, p50: [1765, 1780], p90: [1760, 1790], examiner });
      const xs = [...svg.matchAll(/[MLH]\s*(-?[\d.]+)/g)].map((found) => Number(found[1]));
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...xs)).toBeLessThanOrEqual(640);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it('draws every bin as high as its share', () => {
    const { svg } = yearCurve({
      density: [
        [1700, 0.25],
        [1705, 0.5],
        [1710, 0.25],
      ],
      p50: [1700, 1710],
      p90: [1700, 1715],
    });
    const outline = /d="(M[^"]*Z)"/.exec(svg)?.[1] ?? '';
    const ys = [...outline.matchAll(/L[\d.]+ ([\d.]+)/g)].map((found) => Number(found[1]));
    const heights = ys.slice(0, 6).map((y) => 144 - y);
    expect(heights[0]).toBeCloseTo((heights[2] ?? 0) / 2, 1);
    expect(heights[4]).toBeCloseTo((heights[2] ?? 0) / 2, 1);
  });
});
