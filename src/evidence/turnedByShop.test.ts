import { expect, it } from 'vitest';
import { turnedByShop } from './turnedByShop.ts';

it('says what a habit weighs without the shop files and with them', () => {
  expect(turnedByShop({ withinWhole: 11.2, withoutShopFiles: -4.1 }, 'period-intact')).toBe(
    'If no shop’s file were known it would speak weakly for another reading (−4 decibans); with the file it speaks moderately for a period piece, substantially intact (+11 decibans).',
  );
});

it('says nothing where no file holds the habit, or the file turns nothing', () => {
  expect(turnedByShop({ withinWhole: 5 }, 'period-intact')).toBeUndefined();
  expect(turnedByShop({ withinWhole: 5, withoutShopFiles: 4 }, 'period-intact')).toBeUndefined();
});
