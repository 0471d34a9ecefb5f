import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatMoney, parseMoney } from './money.ts';

test.each([
  ['3200', 320_000],
  [' $3,200 ', 320_000],
  ['3,200.5', 320_050],
  ['0.07', 7],
  ['US$ 1,250,000', 125_000_000],
  ['40 dollars', 4000],
])('%s is read', (text, cents) => {
  expect(parseMoney(text)).toEqual({ ok: true, cents });
});

test.each(['', 'much', '3.200,50', '12.345', '-5', '1,23', '£40', '9999999999999'])(
  '%s is refused in a sentence',
  (text) => {
    expect(parseMoney(text)).toMatchObject({ ok: false, message: expect.stringMatching(/write .*\.$/) });
  },
);

test('what is printed is read back to the cent', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e13 }), (cents) => {
      expect(parseMoney(formatMoney(cents))).toEqual({ ok: true, cents });
    }),
  );
  expect([formatMoney(-12_345), formatMoney(0), formatMoney(100_000_000)]).toEqual([
    '−$123.45',
    '$0',
    '$1,000,000',
  ]);
});
