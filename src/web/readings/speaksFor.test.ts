import { expect, it } from 'vitest';
import { findingWords, sayDecibans } from './speaksFor.ts';

it('prints whole decibans with their sign, and no number where there is none', () => {
  expect([12.4, -3.6, 0.2, null].map(sayDecibans)).toEqual(['+12 db', '−4 db', '0 db', 'no number']);
});

it('says where and what was found', () => {
  expect(findingWords('Pegged tenons', 'left side rail', 'absent')).toBe(
    '“Pegged tenons” on the left side rail, looked for and not there,',
  );
  expect(findingWords('Size', 'top', 'could-not-tell')).toBe('“Size” on the top, could not tell,');
  expect(findingWords('Size', 'the whole piece', 'present')).toBe('“Size” on the whole piece');
});
