import { expect, it } from 'vitest';
import { turnedByShop } from './turnedByShop.ts';

it('says what a habit weighs without the shop files and with them', () => {
  expect(turnedByShop({ periodAgainstLater: { alone: 0, withinWhole: 11.2 }, withoutShopFiles: -4.1 })).toBe(
    'If no shop’s file were known it would speak weakly for a later piece (−4 decibans); with the file it speaks moderately for a period piece (+11 decibans).',
  );
});

it('says nothing where no file holds the habit, or the file turns nothing', () => {
  expect(turnedByShop({ periodAgainstLater: { alone: 0, withinWhole: 5 } })).toBeUndefined();
  expect(
    turnedByShop({ periodAgainstLater: { alone: 0, withinWhole: 5 }, withoutShopFiles: 4 }),
  ).toBeUndefined();
});
