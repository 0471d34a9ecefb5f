import { expect, test } from 'vitest';
import { formatMoney } from './money.ts';

test.each([
  [{ minor: 125_000, currency: 'USD' }, 'USD 1,250.00'],
  [{ minor: 5, currency: 'GBP' }, 'GBP 0.05'],
  [{ minor: -123_456_789, currency: 'EUR' }, '−EUR 1,234,567.89'],
  [{ minor: 1250, currency: 'JPY' }, 'JPY 1,250'],
  [{ minor: 0, currency: 'USD' }, 'USD 0.00'],
])('%o prints as %s', (money, words) => {
  expect(formatMoney(money)).toBe(words);
});

test('an amount with a part of a cent is a programmer’s slip', () => {
  expect(() => formatMoney({ minor: 0.5, currency: 'USD' })).toThrow(RangeError);
});
