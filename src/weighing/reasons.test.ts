import { expect, it } from 'vitest';
import { reasonKey, reasonsOf } from './reasons.ts';
import type { Weighing } from './weighing.ts';

const weight = (sign: string, withinWhole: number | null, alone: number | null = withinWhole) =>
  ({
    sign,
    part: null,
    state: 'present',
    alone,
    withinWhole,
    againstRival: withinWhole,
    words: `words of ${sign}`,
    periodAgainstLater: { alone: 0, withinWhole: 0 },
  }) as Weighing['weights'][number];

const married = {
  cause: { kind: 'alteration' as const, id: 'married', name: 'Upper and lower part married' },
  findings: ['carcase', 'rows'].map((sign) => ({ sign, part: null })),
  withinWhole: 22,
  againstRival: 21,
  words: 'together',
};

it('puts the weightiest first, in a group by what each weighs by itself, one without a number before all', () => {
  const weights = [
    weight('light', 4),
    weight('heavy', 30),
    weight('against', -8),
    weight('carcase', 0.4, -9),
    weight('rows', 0.2, 4),
    weight('feet', 0.1, null),
  ];
  const group = { ...married, findings: ['rows', 'carcase', 'feet'].map((sign) => ({ sign, part: null })) };
  const { forIt, againstIt } = reasonsOf({ weights, reasonGroups: [group], observations: [] });
  expect(forIt.map(({ cause, findings }) => [cause?.id, ...findings.map(({ sign }) => sign)])).toEqual([
    [undefined, 'heavy'],
    ['married', 'feet', 'carcase', 'rows'],
    [undefined, 'light'],
  ]);
  expect(againstIt.map(({ findings }) => findings[0]?.sign)).toEqual(['against']);
  expect(forIt[0]).not.toHaveProperty('limit');
  expect(forIt[0]?.findings[0]).not.toHaveProperty('limit');
});

it('tells one sign on two parts apart', () => {
  const weights = [
    { ...weight('peg', 5), part: 'rail' },
    weight('peg', 4),
    { ...weight('peg', 6), part: 'leg' },
  ];
  const group = {
    ...married,
    findings: [
      { sign: 'peg', part: 'rail' },
      { sign: 'gone', part: null },
    ],
  };
  const { forIt } = reasonsOf({ weights, reasonGroups: [group], observations: [] });
  expect(forIt.map(({ findings }) => findings.map(({ part }) => part))).toEqual([['rail'], ['leg'], [null]]);
});

it('counts findings of one cause once, together, ahead of single ones that weigh less, and names none twice', () => {
  const weights = [
    weight('boards', 7),
    weight('rows', 0.2, 4),
    weight('carcase', 0.4, 9),
    weight('peg', -3.1),
  ];
  const { forIt, againstIt, neither } = reasonsOf({ weights, reasonGroups: [married], observations: [] });
  expect(forIt.map(({ cause, findings }) => [cause?.id, ...findings.map(({ sign }) => sign)])).toEqual([
    ['married', 'carcase', 'rows'],
    [undefined, 'boards'],
  ]);
  expect(forIt[0]).toMatchObject({ withinWhole: 22, againstRival: 21, words: 'together' });
  expect(againstIt.map(({ findings }) => findings[0]?.sign)).toEqual(['peg']);
  expect(neither).toEqual([]);
});

it('tells apart what has no number and what is too little to count as support, less than 2 to 1 (3.01 decibans)', () => {
  const limit = { leavesNothingOf: 'others' as const, words: 'The claim leaves the others nothing.' };
  const weights = [{ ...weight('screw', null), limit }, weight('mute', 3), weight('low', -3)];
  const { forIt, againstIt, limits, neither } = reasonsOf({ weights, reasonGroups: [], observations: [] });
  expect([forIt, againstIt]).toEqual([[], []]);
  expect(limits.map((each) => [each.findings[0]?.sign, each.limit?.words])).toEqual([['screw', limit.words]]);
  expect(limits[0]?.findings[0]?.limit?.words).toBe(limit.words);
  expect(neither.map(({ findings }) => findings[0]?.sign)).toEqual(['mute', 'low']);
});

it('has the examiner’s own observations among the reasons, in the order of what they weigh, and says whose they are', () => {
  const own = (id: string, withinWhole: number) => ({
    id,
    withinWhole,
    againstRival: withinWhole,
    words: '',
  });
  const { forIt, againstIt } = reasonsOf({
    weights: [weight('boards', 7), weight('peg', 4)],
    reasonGroups: [],
    observations: [own('one', 6), own('looked-over', -5)],
  });
  expect(forIt.map((reason) => reason.own ?? reason.findings[0]?.sign)).toEqual(['boards', 'one', 'peg']);
  expect(againstIt.map(reasonKey)).toEqual(['own looked-over']);
});
