import { expect, it } from 'vitest';
import { capital, counted, listed } from './words.ts';

it('puts commas between, and one and or one or before the last', () => {
  const rows = [[], ['a'], ['a', 'b'], ['a', 'b', 'c']];
  expect(rows.map((row) => listed(row))).toEqual(['', 'a', 'a and b', 'a, b and c']);
  expect(rows.map((row) => listed(row, 'or'))).toEqual(['', 'a', 'a or b', 'a, b or c']);
});

it('counts one as one and all else as many', () => {
  expect([0, 1, 2].map((number) => counted(number, 'finding'))).toEqual([
    '0 findings',
    '1 finding',
    '2 findings',
  ]);
  expect([1, 2].map((number) => counted(number, 'entry', 'entries'))).toEqual(['1 entry', '2 entries']);
});

it('makes the first letter a capital, whatever letter it is, and leaves the rest', () => {
  expect(['', 'a Chair', 'écran', '𐐨b', '“x'].map(capital)).toEqual(['', 'A Chair', 'Écran', '𐐀b', '“x']);
});
