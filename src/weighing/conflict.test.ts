import { expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
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
