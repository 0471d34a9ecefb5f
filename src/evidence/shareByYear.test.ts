import { describe, expect, it } from 'vitest';
import type { Sign } from '../knowledge/schema.ts';
import { bestDraw } from './figures.ts';
import { shareByYear } from './signShares.ts';
import { yearAxis } from './yearAxis.ts';

const sign = (span: Partial<NonNullable<Sign['span']>>) =>
  ({
    id: 'wire-nail',
    span: { earliest: 1800, commonFrom: 1890, hardFloor: false, ...span },
    shows: { 'in-use': { in100: '50, 40–60' }, 'out-of-use': { in100: '2, 1–3' } },
  }) as unknown as Sign;

/** The share in a year, on an axis of one bin a year whose middle is that year and a half. */
const at = (year: number, of: Sign) =>
  shareByYear(of, yearAxis(1700, 2000, 1), bestDraw())[year - 1700] ?? Number.NaN;

describe('the share of parts that show a dated sign', () => {
  it('is a twentieth of its height in the year until which it is rare, and rises from there', () => {
    const rare = sign({ rareUntil: 1860 });
    expect(at(1799, rare)).toBeCloseTo(0.02, 12);
    // 0.02 + 0.48 × 0.05 × 29.5 / 60
    expect(at(1829, rare)).toBeCloseTo(0.0318, 12);
    // 0.02 + 0.48 × (0.05 + 0.95 × 15.5 / 30)
    expect(at(1875, rare)).toBeCloseTo(0.2796, 12);
    expect(at(1890, rare)).toBeCloseTo(0.5, 12);
  });

  it('rises straight where no such year is known, so that a patent would count for ordinary use', () => {
    // 0.02 + 0.48 × 29.5 / 90
    expect(at(1829, sign({}))).toBeCloseTo(0.177333, 6);
  });

  it('is nothing before a hard floor', () => {
    expect(at(1799, sign({ rareUntil: 1860, hardFloor: true }))).toBe(0);
  });
});
