import { describe, expect, it } from 'vitest';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import { forLeading, type LookWeight, periodAndLater, sharesUnder } from './weights.ts';

const posterior = (readings: Partial<Record<ReadingId, number>>, log = 0): Posterior => ({
  readings: {
    ...(Object.fromEntries(readingIds.map((id) => [id, 0])) as Record<ReadingId, number>),
    ...readings,
  },
  total: 1,
  log,
});

describe('how probable a finding is under a reading', () => {
  it('is what the reading weighs with it over what it weighs without, each on its own scale', () => {
    // With it 0.2 and 0.1 times e³, without 0.8 and 0.1 times e⁴: a quarter and one, over e.
    const shares = sharesUnder(
      posterior({ 'period-intact': 0.2, 'made-up': 0.1 }, 3),
      posterior({ 'period-intact': 0.8, 'made-up': 0.1 }, 4),
    );
    expect(shares['period-intact']).toBeCloseTo(0.25 / Math.E, 12);
    expect(shares['made-up']).toBeCloseTo(1 / Math.E, 12);
    expect(Object.keys(shares)).toEqual([...readingIds]);
  });

  it('is never above one for rounding, and nothing where nothing was left without it', () => {
    const shares = sharesUnder(
      posterior({ 'period-intact': 0.5000001, 'made-up': 0.1 }),
      posterior({ 'period-intact': 0.5 }),
    );
    expect(shares['period-intact']).toBe(1);
    expect(shares['made-up']).toBe(0);
    expect(shares['later-bench-copy']).toBe(0);
  });
});

describe('how much a finding counts among the weightiest', () => {
  const weight = (withinWhole: number | null, without: Posterior) =>
    ({ withinWhole, without }) as unknown as LookWeight;
  const both = posterior({ 'period-intact': 0.5, 'made-up': 0.5 });

  it('is its weight, or above all where it leaves a side nothing that had something without it', () => {
    expect(forLeading(weight(-3, both), 'period-intact')).toBe(-3);
    expect(forLeading(weight(null, both), 'period-intact')).toBe(Number.POSITIVE_INFINITY);
    expect(forLeading(weight(null, posterior({ 'period-intact': 1 })), 'period-intact')).toBe(0);
  });
});

it('stands a piece put together from old ones on neither side of period against later', () => {
  expect(periodAndLater.one).toEqual(['period-intact', 'period-repaired', 'period-altered']);
  expect(periodAndLater.other).toEqual(['later-bench-copy', 'later-machine-copy', 'made-to-deceive']);
});
