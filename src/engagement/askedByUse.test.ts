import { expect, it, test } from 'vitest';
import { type Purpose, purpose } from '../piece/engagement.ts';
import { type Piece, piece } from '../piece/piece.ts';
import { askedByUse, askedOf, unanswered } from './askedByUse.ts';
import { missingForSigning } from './missingForSigning.ts';
import { purposeNames } from './purposeNames.ts';
import { valueForPurpose } from './valueForPurpose.ts';

const of = (use: Purpose, answers: Record<string, string> = {}, more: object = {}): Piece =>
  piece.parse({ id: 'p', form: 'side-chair', engagement: { purpose: use, answers }, ...more });
const ids = (items: readonly { id: string }[]) => items.map(({ id }) => id);

test.each(purpose.options)('%s has a name, and asks each thing once, with where to check it', (use) => {
  expect(purposeNames[use].length).toBeGreaterThan(3);
  expect(new Set(ids(askedByUse[use])).size).toBe(askedByUse[use].length);
  for (const { asks, check } of askedByUse[use]) {
    expect(asks).not.toMatch(/[.?]$/);
    expect(check.length).toBeGreaterThan(10);
  }
});

it('asks of a gift to charity what Publication 561 (January 2023, page 10) lists and no other field holds', () => {
  expect(ids(askedByUse.donation)).toEqual(
    expect.arrayContaining(['giftOn', 'acquired', 'agreement', 'preparedFor', 'declaration']),
  );
});

it('asks for wildlife law the four tests of the antique exemption (16 USC 1539(h), as the wildlife service tells it) and for independence', () => {
  expect(ids(askedByUse.wildlife)).toEqual(
    expect.arrayContaining(['species', 'ageGrounds', 'repairsSince1973', 'entered', 'independence']),
  );
  expect([valueForPurpose.wildlife, valueForPurpose.curiosity]).toEqual([undefined, undefined]);
});

it('takes “none” for an answer and a blank for none', () => {
  const all = ids(askedByUse.damage);
  expect(ids(unanswered(of('damage')))).toEqual(all);
  expect(ids(unanswered(of('damage', { repair: 'None.', policy: '  ' })))).toEqual(
    all.filter((id) => id !== 'repair'),
  );
  expect(ids(unanswered(of('damage', Object.fromEntries(all.map((id) => [id, 'none'])))))).toEqual([]);
});

it('asks about worth only where one is stated, and nothing of the curious', () => {
  const worth = { worth: { conclusion: 'A fair sum.' } };
  expect(ids(askedOf(of('insurance')))).not.toContain('earlierServices');
  expect(ids(askedOf(of('insurance', {}, worth)))).toContain('earlierServices');
  expect(askedOf(of('curiosity', {}, worth))).toEqual([]);
});

it('lists before signing what is blank: the use’s own as needed, that of a worth as printed not stated', () => {
  const asked = missingForSigning(
    of('wildlife', { species: 'None.' }, { worth: { conclusion: 'A sum.' } }),
  ).filter(({ id }) => id.startsWith('asked:'));
  const must = asked.filter((each) => each.must).map(({ id }) => id.slice(6));
  expect(must).toEqual(ids(askedByUse.wildlife).filter((id) => id !== 'species'));
  expect(asked.filter((each) => !each.must).map(({ id }) => id)).toContain('asked:earlierServices');
  expect(asked[0]?.where).toEqual({ page: 'engagement', at: 'asked-by-use' });
});
