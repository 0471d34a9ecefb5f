import { expect, test } from 'vitest';
import { idWords } from './idWords.ts';

test('an id is read as words, in American spelling', () => {
  expect(idWords('base-moulding')).toBe('base molding');
  expect(idWords('colour-stops-at-cover')).toBe('color stops at cover');
  expect(idWords('drawer-1')).toBe('drawer 1');
});
