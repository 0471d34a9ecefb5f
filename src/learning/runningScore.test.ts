import { describe, expect, it } from 'vitest';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { type MakingKind, readingsOfMaking } from '../piece/readings.ts';
import { expectedCounts } from './expectedCounts.ts';
import { learnedKnowledge, settledIn, settledInWords } from './learnedKnowledge.ts';
import { probabilityOfVerdict, reckonSettled } from './runningScore.ts';
import type { SettledCase } from './settledCase.ts';
import { fewestCases, standingOf } from './standing.ts';

// Of 40 period pieces in 100, 20 of 100 show the mark; of 30 bench copies 60, of 20 machine copies 50, of 10 fakes 30.
const knowledge = handKnowledge({ mark: ['20, 10–30', '60, 50–70', '50, 40–60', '30, 20–40'] });

function settled(piece: string, making: MakingKind, more: Partial<SettledCase> = {}): SettledCase {
  return {
    piece,
    on: '2026-03-01',
    verdict: readingsOfMaking[making],
    weight: 1,
    found: {
      form: 'box',
      mode: 'in-hand',
      findings: [{ sign: 'mark', part: 'board', state: 'present', sure: 'plain' }],
    },
    ...more,
  };
}
const rounded = (cases: readonly SettledCase[]) =>
  reckonSettled(cases, knowledge, 2019).map(({ piece, fixed, learned }) => [
    piece,
    fixed?.toFixed(4),
    learned?.toFixed(4),
  ]);

describe('the running score', () => {
  it('foretells each case by those settled before it, as worked on paper', () => {
    // By the figures as they are 40 · 0.2 of 40 · 0.2 + 30 · 0.6 + 20 · 0.5 + 10 · 0.3: 8 / 39 = 0.2051. After one period piece that
    // had it, Beta(8.459, 33.837) has become Beta(9.459, 33.837), 21.8 of 100: 8.72 / 39.72 = 0.2195.
    expect(
      rounded([settled('b', 'of-the-period', { on: '2026-04-01' }), settled('a', 'of-the-period')]),
    ).toEqual([
      ['a', '0.2051', '0.2051'],
      ['b', '0.2051', '0.2195'],
    ]);
  });

  it('says nothing of a form that is not known, and learns nothing from it', () => {
    const strange = settled('a', 'of-the-period');
    const [first, second] = reckonSettled(
      [{ ...strange, found: { ...strange.found, form: 'sedan' } }, settled('b', 'of-the-period')],
      knowledge,
      2019,
    );
    expect(first).toEqual({ piece: 'a', on: '2026-03-01', weight: 1, counts: [] });
    expect(second?.learned).toBe(second?.fixed);
  });

  it('tells how far it is, and stops when it is told to', () => {
    const told: number[] = [];
    const cases = ['a', 'b', 'c', 'd'].map((id) => settled(id, 'of-the-period'));
    expect(
      reckonSettled(cases, knowledge, 2019, (share) => {
        told.push(share);
        return share < 0.5;
      }),
    ).toHaveLength(2);
    expect(told).toEqual([0, 0.25, 0.5]);
  });
});

describe('what a settled case counts', () => {
  it('is halved where a second expert says so', () => {
    const [count] = expectedCounts(settled('a', 'of-the-period', { weight: 0.5 }), knowledge, 2019);
    expect(count).toMatchObject({ sign: 'mark', state: 'period', of: expect.closeTo(0.5, 9) });
  });

  it('is shared by the parts of one piece', () => {
    // Three parts with ρ = habitTogether: 3 / (1 + 2ρ) in all for a maker's way, with alikeTogether for how wood has aged.
    const small = smallKnowledge();
    const rho = (figure: { in100: string }) => Number.parseFloat(figure.in100) / 100;
    const found = (sign: string) => ({
      form: 'bench',
      mode: 'in-hand' as const,
      findings: ['rail', 'leg-left', 'leg-right'].map((part) => ({
        sign,
        part,
        state: 'present' as const,
        sure: 'plain' as const,
      })),
    });
    const of = (sign: string) =>
      expectedCounts(
        settled('a', 'later-copy', { verdict: ['later-machine-copy'], found: found(sign) }),
        small,
        2019,
      ).reduce((sum, each) => sum + each.of, 0);
    expect(of('darkened')).toBeCloseTo(3 / (1 + 2 * rho(small.making.alikeTogether)), 3);
    expect(of('centred')).toBeCloseTo(3 / (1 + 2 * rho(small.making.habitTogether)), 3);
  });
});

describe('knowledge with settled cases taken in', () => {
  const reckoned = reckonSettled(
    [settled('a', 'of-the-period'), settled('b', 'later-copy', { verdict: ['later-bench-copy'] })],
    knowledge,
    2019,
  );

  it('has the figures moved, says from how many cases, and has a version of its own', () => {
    const learned = learnedKnowledge(knowledge, reckoned);
    expect(learned.signs.mark?.shows.period).toMatchObject({
      settled: { cases: 1, of: expect.closeTo(1, 9), before: '20, 10–30' },
    });
    expect(learned.signs.mark?.shows['machine-copy']).toBe(knowledge.signs.mark?.shows['machine-copy']);
    expect(settledIn(learned.version)).toBe(2);
    expect(settledIn(knowledge.version)).toBe(0);
    expect(settledInWords(learned.version)).toContain('moved by 2 settled cases of the examiner’s own');
    expect(settledInWords(knowledge.version)).toBeUndefined();
  });

  it('is what it would be had a case never been, once that is taken out', () => {
    const [first, second] = reckoned;
    const without = learnedKnowledge(knowledge, reckoned.slice(1));
    expect(without).toEqual(learnedKnowledge(knowledge, second === undefined ? [] : [second]));
    expect(without.signs.mark?.shows.period).toEqual(knowledge.signs.mark?.shows.period);
    expect(without.version).not.toBe(learnedKnowledge(knowledge, reckoned).version);
    expect(learnedKnowledge(knowledge, [])).toBe(knowledge);
    expect(first?.counts).not.toEqual([]);
  });

  it('weighs otherwise than before', () => {
    const [case1] = [settled('c', 'of-the-period')];
    const before = probabilityOfVerdict(case1 as SettledCase, knowledge, 2019) ?? 0;
    const after = probabilityOfVerdict(
      case1 as SettledCase,
      learnedKnowledge(knowledge, reckoned.slice(0, 1)),
      2019,
    );
    expect(after).toBeGreaterThan(before);
  });
});

describe('whether learned figures may be used', () => {
  const foretold = (fixed: number, learned: number, count: number) =>
    Array.from({ length: count }, (_, at) => ({
      piece: String(at),
      on: '2026-03-01',
      weight: 1,
      counts: [],
      fixed,
      learned,
    }));

  it('takes ten cases at least', () => {
    expect(standingOf([])).toEqual({
      cases: 0,
      mayUse: false,
      words: 'No case is settled yet; at least 10 are needed.',
    });
    const nine = standingOf(foretold(0.25, 0.5, fewestCases - 1));
    expect(nine.mayUse).toBe(false);
    expect(nine.words).toBe(
      '9 cases are settled; at least 10 are needed. So far: 1.000 bits a case against 2.000 by the figures as they are (lower is better).',
    );
    expect(standingOf(foretold(0.25, 0.5, 1)).words).toContain('1 case is settled');
    expect(standingOf(foretold(0.25, 0.5, fewestCases))).toMatchObject({
      mayUse: true,
      words:
        'Over 10 cases learned figures predicted better: 1.000 bits a case against 2.000 by the figures as they are (lower is better).',
    });
  });

  it('takes a better score: as good is not better', () => {
    expect(standingOf(foretold(0.5, 0.5, 12)).mayUse).toBe(false);
    expect(standingOf(foretold(0.5, 0.25, 12))).toMatchObject({
      mayUse: false,
      words:
        'Learned figures predicted no better: 2.000 bits a case against 1.000 by the figures as they are (lower is better), over 12 cases.',
    });
  });

  it('counts a verdict that was held for impossible as one in a thousand, and a case that was not foretold not at all', () => {
    expect(standingOf(foretold(0, 0.5, 10)).fixedBits).toBeCloseTo(Math.log2(1000), 9);
    const [one] = foretold(0.5, 0.5, 1);
    const { fixed: _, learned: __, ...unforetold } = one as NonNullable<typeof one>;
    expect(standingOf([unforetold]).cases).toBe(0);
  });
});
