import { describe, expect, test } from 'vitest';
import { comparePieces } from './comparePieces.ts';
import { expectedAtFirst } from './observationWords.ts';
import { piece } from './piece.ts';

const finding = (sign: string, state: string, words = '') => ({
  [`${sign}@rail`]: { id: `${sign}@rail`, sign, part: 'rail', state, words },
});
const of = (more: object) => piece.parse({ id: 'p', form: 'side-chair', ...more });

describe('a piece beside what it was', () => {
  test('is the same where nothing that is weighed or printed differs', () => {
    const was = of({ findings: finding('a', 'present') });
    const now = of({
      findings: finding('a', 'present'),
      putAway: true,
      opinion: { status: 'signed', signedBy: 'P', signedOn: '2026-11-20', isNew: 'x', why: 'y' },
    });
    expect(comparePieces(was, now)).toMatchObject({ same: true, fields: [] });
  });

  test('names findings that came, went and changed', () => {
    const was = of({ findings: { ...finding('a', 'present'), ...finding('b', 'present') } });
    const now = of({ findings: { ...finding('b', 'absent'), ...finding('c', 'present') } });
    const { same, findings } = comparePieces(was, now);
    expect(same).toBe(false);
    expect(findings.added.map((each) => each.sign)).toEqual(['c']);
    expect(findings.removed.map((each) => each.sign)).toEqual(['a']);
    expect(findings.changed.map((each) => [each.was.state, each.now.state])).toEqual([['present', 'absent']]);
  });

  test('names observations that came and changed, and what was stated of the whole', () => {
    const expected = { ...expectedAtFirst, copied: 'often' };
    const own = (id: string, words: string) => ({ [id]: { id, words, expected } });
    const was = of({ observations: own('a', 'Cut down.') });
    const now = of({
      observations: { ...own('a', 'Cut down by an inch.'), ...own('b', 'New.') },
      lookedOver: true,
    });
    const { same, observations, fields } = comparePieces(was, now);
    expect(same).toBe(false);
    expect(observations.added.map(({ words }) => words)).toEqual(['New.']);
    expect(observations.changed.map((each) => each.was.words)).toEqual(['Cut down.']);
    expect(fields).toEqual([{ path: ['lookedOver'], was: false, now: true }]);
    expect(comparePieces(was, of({ observations: own('a', 'Cut down.') })).same).toBe(true);
  });

  test('names each field that holds something else, comes or goes', () => {
    const was = of({ engagement: { client: 'A' }, opinion: { conclusion: 'Old.' } });
    const now = of({
      engagement: { client: 'B' },
      claim: { period: [1760, 1790] },
      opinion: { conclusion: 'Old.', resolutions: { 'a@rail': 'Settled.' } },
    });
    expect(comparePieces(was, now).fields).toEqual([
      { path: ['claim', 'period'], now: [1760, 1790] },
      { path: ['engagement', 'client'], was: 'A', now: 'B' },
      { path: ['opinion', 'resolutions', 'a@rail'], now: 'Settled.' },
    ]);
  });

  test('sees a place that only a newer program knows', () => {
    expect(comparePieces(of({}), of({ weight: 12 })).fields).toEqual([{ path: ['weight'], now: 12 }]);
  });
});

test('that the case was settled since is no difference: it is neither weighed nor printed', () => {
  const settled = { by: 'document', making: 'to-deceive', on: '2026-03-01' };
  expect(comparePieces(of({}), of({ settled })).same).toBe(true);
});
