import { describe, expect, it } from 'vitest';
import type { ReadingId } from '../piece/readings.ts';
import { conditionOf, leadingMaking, makingFirst, makingShares } from './makingFirst.ts';
import type { PartStanding } from './weighing.ts';

// Every number is typed here or added up by hand in the comment beside it.
const readings: Record<ReadingId, number> = {
  'period-intact': 0.3,
  'period-repaired': 0.1,
  'period-altered': 0.05,
  'made-up': 0.05,
  'later-bench-copy': 0.2,
  'later-machine-copy': 0.1,
  'made-to-deceive': 0.2,
};

describe('how the piece came to be', () => {
  it('is as probable as its readings together', () => {
    const shares = makingShares(readings);
    // 0.3 + 0.1 + 0.05; 0.05; 0.2 + 0.1; 0.2.
    expect(shares['of-the-period']).toBeCloseTo(0.45, 12);
    expect(shares['put-together']).toBeCloseTo(0.05, 12);
    expect(shares['later-copy']).toBeCloseTo(0.3, 12);
    expect(shares['to-deceive']).toBeCloseTo(0.2, 12);
  });

  it('is led by the most probable answer, of equal ones by the earlier listed', () => {
    const shares = (period: number, together: number, later: number, deceive: number) => ({
      'of-the-period': period,
      'put-together': together,
      'later-copy': later,
      'to-deceive': deceive,
    });
    expect(leadingMaking(shares(0.1, 0.2, 0.3, 0.4))).toBe('to-deceive');
    expect(leadingMaking(shares(0.1, 0.4, 0.4, 0.1))).toBe('put-together');
    expect(leadingMaking(shares(0.25, 0.25, 0.25, 0.25))).toBe('of-the-period');
  });
});

describe('the making as it is told first', () => {
  const shares = { 'of-the-period': 0.02, 'put-together': 0.005, 'later-copy': 0.96, 'to-deceive': 0.015 };
  const drawn = {
    intervals: {
      'of-the-period': [0.01, 0.08],
      'put-together': [0.001, 0.01],
      'later-copy': [0.9, 0.99],
      'to-deceive': [0.002, 0.03],
    } as Record<keyof typeof shares, [number, number]>,
    shareLeading: 0.97,
  };
  const grounds = { looks: 5, photoOnly: false, clashes: false, draws: 100 };
  const told = (
    more: Partial<typeof grounds> = {},
    isConsidered: (id: ReadingId) => boolean = () => true,
    shown = (probability: number) => probability,
  ) => makingFirst(shares, drawn, { ...grounds, ...more }, shown, isConsidered);

  it('gives each answer with its range over the redraws, the most probable first', () => {
    expect(told().leading).toBe('later-copy');
    expect(told().answers).toEqual([
      { id: 'later-copy', probability: 0.96, low: 0.9, high: 0.99 },
      { id: 'of-the-period', probability: 0.02, low: 0.01, high: 0.08 },
      { id: 'to-deceive', probability: 0.015, low: 0.002, high: 0.03 },
      { id: 'put-together', probability: 0.005, low: 0.001, high: 0.01 },
    ]);
  });

  it('has no range before the redraws', () => {
    for (const { probability, low, high } of told({ draws: 0 }).answers)
      expect([low, high]).toEqual([probability, probability]);
  });

  it('shows every number as numbers are shown', () => {
    const [first] = told({}, undefined, (probability) => Math.min(0.5, probability)).answers;
    expect(first).toEqual({ id: 'later-copy', probability: 0.5, low: 0.5, high: 0.5 });
    const [quick] = told({ draws: 0 }, undefined, (probability) => Math.min(0.5, probability)).answers;
    expect(quick).toEqual({ id: 'later-copy', probability: 0.5, low: 0.5, high: 0.5 });
  });

  it('says that an answer was not considered where none of its readings was', () => {
    const notConsidered = (...ids: ReadingId[]) =>
      told({}, (id) => !ids.includes(id))
        .answers.filter(({ considered }) => considered === false)
        .map(({ id }) => id);
    expect(notConsidered('made-up')).toEqual(['put-together']);
    expect(notConsidered('later-bench-copy')).toEqual([]);
    expect(notConsidered('later-bench-copy', 'later-machine-copy')).toEqual(['later-copy']);
  });

  it('is settled by the leading answer’s own probability, share of the redraws and low end', () => {
    // 0.96 is at least 95 in 100, 0.97 of the redraws too, and 0.9 is above 80 in 100.
    expect(told()).toMatchObject({ firm: true, firmness: { shareOfDraws: 0.97, draws: 100 } });
    expect(told({ photoOnly: true }).firm).toBe(false);
    expect(told({ draws: 0 })).toMatchObject({ firm: false, firmness: { shareOfDraws: null } });
    const low = makingFirst(
      shares,
      { ...drawn, intervals: { ...drawn.intervals, 'later-copy': [0.79, 0.99] } },
      grounds,
      (probability) => probability,
      () => true,
    );
    expect(low.firm).toBe(false);
    expect(low.firmness.why).toContain('it falls below 80 in 100');
  });
});

describe('the condition as it is told second', () => {
  const part = (id: string, standing: PartStanding['standing'], origin: Record<string, number>) =>
    ({ id, standing, origin }) as unknown as PartStanding;
  const parts = [
    part('top', 'of-the-making', { 'of-the-making': 0.9 }),
    part('leg', 'repair', { 'of-the-making': 0.1 }),
    part('rail', 'unsure', { 'of-the-making': 0.5 }),
    part('back', 'not-looked-at', { 'of-the-making': 0.75 }),
    part('foot', 'not-looked-at', { 'of-the-making': 0.9 }),
    part('pull', 'not-looked-at', {}),
  ];

  it('is that of a piece of the period, whatever else it may be', () => {
    // 0.3, 0.1 and 0.05 of 0.45.
    expect(conditionOf(readings, parts).ifOfThePeriod).toEqual([
      { id: 'period-intact', share: expect.closeTo(2 / 3, 12) },
      { id: 'period-repaired', share: expect.closeTo(2 / 9, 12) },
      { id: 'period-altered', share: expect.closeTo(1 / 9, 12) },
    ]);
    const none = { ...readings, 'period-intact': 0, 'period-repaired': 0, 'period-altered': 0 };
    expect(conditionOf(none, parts).ifOfThePeriod.map(({ share }) => share)).toEqual([0, 0, 0]);
  });

  it('counts the parts looked at that are original, and what is to be expected later of the others', () => {
    const { seen, unseen } = conditionOf(readings, parts);
    expect(seen).toEqual({ parts: 3, original: 1 });
    // A quarter of one and a tenth of another; nothing of one of which nothing is known.
    expect(unseen).toEqual({ parts: 3, laterExpected: expect.closeTo(0.35, 12) });
  });
});
