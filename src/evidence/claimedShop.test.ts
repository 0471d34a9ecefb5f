import { expect, it } from 'vitest';
import type { Shop } from '../knowledge/schema.ts';
import { isClaimed } from './claimedShop.ts';

const claimed = (place: string, ...placeWords: string[]) =>
  isClaimed({ placeWords } as unknown as Shop, place);

it('is a shop’s place where one of its words stands in it, whole', () => {
  expect(claimed('Newport, Rhode Island', 'Newport')).toBe(true);
  expect(claimed('Probably Rhode Island', 'Newport', 'Rhode Island')).toBe(true);
  expect(claimed('Newport', 'port')).toBe(false);
  expect(claimed('Port', 'Newport')).toBe(false);
  expect(claimed('Salemtown', 'Salem')).toBe(false);
  expect(claimed('Salem', 'Boston', 'Newport')).toBe(false);
  expect(claimed('Boston')).toBe(false);
});

it('whatever its case, and whatever stands between the words and around them', () => {
  expect(claimed('NEWPORT', 'newport')).toBe(true);
  expect(claimed('newport', 'NEWPORT')).toBe(true);
  // One letter in capitals is two, and is read as it is written small.
  expect(claimed('Strass', 'Straß')).toBe(false);
  expect(claimed('Rhode - Island?', '(Rhode Island)')).toBe(true);
  expect(claimed('(Rhode/Island)', 'Rhode   Island.')).toBe(true);
  expect(claimed('Zürich', 'Zürich')).toBe(true);
  expect(claimed('Zürich', 'Z rich')).toBe(false);
  expect(claimed('Ward 8', 'ward 8')).toBe(true);
  expect(claimed('Ward 8', 'Ward 9')).toBe(false);
});
