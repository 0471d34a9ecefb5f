import { expect, test } from 'vitest';
import { type Piece, piece } from '../piece/piece.ts';
import { lacksForWorth, statesWorth } from './lacksForWorth.ts';
import { missingForSigning } from './missingForSigning.ts';

const whole = {
  purpose: 'estate' as const,
  effectiveOn: '2026-05-01',
  mayRely: 'The executor.',
  interest: 'None.',
};
const stated = {
  definition: 'Fair market value.',
  definitionFrom: 'The regulation.',
  market: 'Auction.',
  approaches: Object.fromEntries(
    ['sales', 'cost', 'income'].map((id) => [id, { used: id === 'sales', why: 'So.' }]),
  ),
  assumptions: 'none',
  lowCents: 100_000,
  conclusion: 'It follows.',
};
const of = (worth: object, engagement: object = whole): Piece =>
  piece.parse({ id: 'p', form: 'side-chair', worth, engagement });

test('nothing is lacking where no worth is stated, nor where all of it is; “none” is an answer', () => {
  expect([statesWorth(of({})), lacksForWorth(of({}, {}))]).toEqual([false, []]);
  expect(lacksForWorth(of(stated))).toEqual([]);
});

test.each(['definition', 'definitionFrom', 'market', 'assumptions', 'lowCents', 'conclusion'] as const)(
  '%s is asked for where it is blank',
  (field) => {
    const { [field]: _, ...rest } = stated;
    expect(lacksForWorth(of(rest))).toHaveLength(1);
    if (field !== 'lowCents') expect(lacksForWorth(of({ ...rest, [field]: ' ' }))).toHaveLength(1);
  },
);

test('each approach is asked for, and its reason; the engagement for its own', () => {
  expect(lacksForWorth(of({ ...stated, approaches: {} }))).toHaveLength(3);
  const noReason = { ...stated.approaches, cost: { used: false, why: '' } };
  expect(lacksForWorth(of({ ...stated, approaches: noReason }))).toEqual([
    { id: 'cost', words: 'why the cost approach was left out', page: 'worth' },
  ]);
  expect(lacksForWorth(of(stated, {})).map(({ id, page }) => [id, page])).toEqual(
    ['purpose', 'effectiveOn', 'mayRely', 'interest'].map((id) => [id, 'engagement']),
  );
});

test('signing tells what the worth lacks, with its page, and asks nothing twice', () => {
  const { market: _, ...rest } = stated;
  const told = missingForSigning(of(rest, {})).filter(({ where }) => where.page === 'worth');
  expect(told.map(({ words, must }) => [words, must])).toEqual([
    ['Of the worth: the market, and why', false],
  ]);
});
