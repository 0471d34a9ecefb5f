import { describe, expect, it } from 'vitest';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import { evaluate } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { leadingOf } from '../summation/readingPosterior.ts';
import { wouldChange } from './wouldChange.ts';

/**
 * So many signs, each shown by 70 in 100 period pieces and 40 of any other, all of them seen; the odds are those of a period
 * piece to one bench copy. Each finding makes them 70 : 40 times what they were; had it come out otherwise, 30 : 60 times.
 */
function sets(signs: number, odds: number, most?: number) {
  const names = Array.from({ length: signs }, (_, n) => `s${n}`);
  const knowledge = handKnowledge(
    Object.fromEntries(names.map((name) => [name, ['70', '40', '40', '40'] as const])),
    [100 * odds, 100, 50, 50],
  );
  const ready = prepareCase(
    { form: 'box', mode: 'in-hand', findings: names.map((sign) => ({ sign, state: 'present' })) },
    knowledge,
    2026,
  );
  if (!ready.ok) throw new Error('the case was refused');
  const evaluation = evaluate(fixModel(layOut(ready.prepared), bestDraw()));
  expect(leadingOf(evaluation.posterior)).toBe('period-intact');
  return wouldChange(evaluation, 'period-intact', most).map(({ turned, to }) => {
    expect(to).toBe('later-bench-copy');
    // All weigh alike: in which order they stand within a set is left open.
    return turned
      .map(({ look }) => look.sign.id)
      .toSorted()
      .join(' ');
  });
}

describe('the smallest sets of findings that would put another reading first', () => {
  it('are single findings where one is enough', () => {
    // 1.5·0.5 is below 1.
    expect(sets(1, 1.5)).toEqual(['s0']);
  });

  it('are all sets of two where two are needed, at most as many as are asked for', () => {
    // One of three turned leaves 1.2·1.75²·0.5 = 1.84, two leave 1.2·1.75·0.25 = 0.525.
    expect(sets(3, 1.2).toSorted()).toEqual(['s0 s1', 's0 s2', 's1 s2']);
    expect(sets(3, 1.2, 2)).toHaveLength(2);
    // One of five 0.5·1.75⁴·0.5 = 2.34, two 0.5·1.75³·0.25 = 0.67: ten sets, of which five are told.
    expect(sets(5, 0.5)).toHaveLength(5);
  });

  it('are sets of three, four or five where fewer would not do', () => {
    // Two of three turned leave 5·1.75·0.25 = 2.19, all three 5·0.125 = 0.625.
    expect(sets(3, 5)).toEqual(['s0 s1 s2']);
    // Three of four 5·1.75·0.125 = 1.09, all four 0.31.
    expect(sets(4, 5)).toEqual(['s0 s1 s2 s3']);
    // Four of five 12·1.75·0.0625 = 1.31, all five 0.375.
    expect(sets(5, 12)).toEqual(['s0 s1 s2 s3 s4']);
  });

  it('are none where all five would not do, and where nothing was found', () => {
    // 100·0.5⁵ = 3.1.
    expect(sets(5, 100)).toEqual([]);
    expect(sets(0, 2)).toEqual([]);
  });
});
