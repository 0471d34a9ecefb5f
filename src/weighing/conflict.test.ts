import { expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import { weighCase } from './weighCase.ts';

function told(signs: readonly string[]) {
  const findings: CaseToWeigh['findings'] = signs.map((sign) => ({ sign, part: 'rail', state: 'present' }));
  const result = weighCase({ form: 'bench', mode: 'in-hand', findings, quick: true }, smallKnowledge(), {
    yearNow: 2026,
  });
  if (!result.ok) throw new Error('the case was refused');
  return result.output;
}

it('says of a clash which reading fits least badly, how probable a history outside the list is, and what to do', () => {
  const { unexplained } = told(['plane-tracks', 'sander-swirl', 'odd-holes', 'late-screw']);
  expect(unexplained.reason).toMatch(
    /^The findings clash: even for a later copy made by hand, they are much less probable together than one by one\. That something outside the list explains them is possible \(1\d in 100\)\. Look again at those that do not fit\.$/,
  );
});

it('says of sound findings under which reading they hang together', () => {
  const { unexplained, leading } = told(['plane-tracks', 'darkened']);
  expect(unexplained).toMatchObject({ unexplained: false, reason: expect.stringMatching(/hang together/) });
  expect(leading).toMatch(/^period/);
  expect(unexplained.reason).toContain('a period piece');
});

it('keeps the two in a hundred where there is too little to clash', () => {
  for (const signs of [[], ['plane-tracks']])
    expect(told(signs).unexplained).toEqual({
      unexplained: false,
      probability: 0.02,
      reason: 'Too few findings to clash.',
    });
});

// 40 : 30 : 20 : 10 before. By itself “a” is 0.4·0.9 + 0.6·0.01 = 0.366 probable, “b” 0.4·0.01 + 0.6·0.9 = 0.544, “c” 0.3,
// and both a and b 0.4·0.9·0.01 + 0.6·0.01·0.9 = 0.009.
const clashing = handKnowledge({
  a: ['90', '1', '1', '1'],
  b: ['1', '90', '90', '90'],
  c: ['30', '30', '30', '30'],
  'period-only': ['50', '0', '0', '0'],
  'copies-only': ['0', '40', '40', '40'],
});
function clash(known: ReturnType<typeof handKnowledge>, ...signs: string[]) {
  const findings: CaseToWeigh['findings'] = signs.map((sign) => ({ sign, state: 'present' }));
  const result = weighCase({ form: 'box', mode: 'in-hand', findings, quick: true }, known, { yearNow: 2026 });
  if (!result.ok) throw new Error('the case was refused');
  return result.output.unexplained;
}

it('weighs how probable the findings are one by one against all together', () => {
  const ratio = (0.366 * 0.544) / 0.009;
  const probability = (0.02 * ratio) / (0.02 * ratio + 0.98);
  for (const signs of [
    ['a', 'b'],
    // What says nothing of anything changes nothing.
    ['a', 'b', 'c'],
  ]) {
    const told = clash(clashing, ...signs);
    expect(told.probability).toBeCloseTo(probability, 9);
    expect(told.unexplained).toBe(true);
  }
});

it('says so from one in ten on', () => {
  // Singly 0.4·0.9 + 0.6·b and 0.4·b + 0.6·0.9, together 0.9·b; one in ten is where the ratio is 5.4.
  const known = (b: string) => handKnowledge({ a: ['90', b, b, b], b: [b, '90', '90', '90'] });
  const at = (b: number) => {
    const ratio = ((0.36 + 0.006 * b) * (0.004 * b + 0.54)) / (0.009 * b);
    return (0.02 * ratio) / (0.02 * ratio + 0.98);
  };
  expect(at(4.5)).toBeLessThan(0.1);
  expect(at(4.3)).toBeGreaterThan(0.1);
  expect(clash(known('4.5'), 'a', 'b')).toMatchObject({
    unexplained: false,
    probability: expect.closeTo(at(4.5), 9),
  });
  expect(clash(known('4.3'), 'a', 'b')).toMatchObject({
    unexplained: true,
    probability: expect.closeTo(at(4.3), 9),
  });
});

it('says of findings that cannot all be true that they cannot', () => {
  expect(clash(clashing, 'period-only', 'copies-only')).toEqual({
    unexplained: true,
    probability: 1,
    reason: 'The findings cannot all be true of one piece under any reading.',
  });
});
