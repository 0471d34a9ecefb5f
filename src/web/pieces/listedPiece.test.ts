import { describe, expect, test } from 'vitest';
import { answersTo, type ListedPiece, sortedIntoPlaces } from './listedPiece.ts';

const chair: ListedPiece = {
  id: 'a',
  title: 'Hall chair with a pierced splat',
  form: 'side-chair',
  example: false,
  putAway: false,
  status: 'draft',
  mode: 'in-hand',
  updatedAt: '2026-11-02T10:00:00Z',
  findings: 3,
  photos: 0,
  client: 'Mme Béatrice Orme',
  maker: null,
  period: [1760, 1785],
};

describe('finding a piece by words', () => {
  test.each([
    ['', true],
    ['hall SPLAT', true],
    ['beatrice', true],
    ['side chair', true],
    ['1770', true],
    ['1780s orme', true],
    ['1786', false],
    ['1790s', false],
    ['hall sideboard', false],
  ])('%s', (words, found) => {
    expect(answersTo(words, chair, 'Side chair')).toBe(found);
  });
});

test('every piece stands in one place, the latest first', () => {
  const signed: ListedPiece = { ...chair, id: 'b', status: 'signed' };
  const example: ListedPiece = { ...chair, id: 'c', example: true };
  const away: ListedPiece = { ...chair, id: 'd', putAway: true };
  const later: ListedPiece = { ...chair, id: 'e', updatedAt: '2026-11-20T10:00:00Z' };
  const places = sortedIntoPlaces([chair, signed, example, away, later], (one) => one.putAway);
  expect(
    Object.fromEntries(Object.entries(places).map(([place, list]) => [place, list.map((one) => one.id)])),
  ).toEqual({
    open: ['e', 'a'],
    signed: ['b'],
    examples: ['c'],
    away: ['d'],
  });
});
