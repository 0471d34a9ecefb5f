import { expect, it } from 'vitest';
import { turnedByShop } from './turnedByShop.ts';

it('says what a habit weighs without the shop files and with them', () => {
  expect(turnedByShop({ periodAgainstLater: { alone: 0, withinWhole: 11.2 }, withoutShopFiles: -4.1 })).toBe(
    'If no shop’s file were known it would speak weakly for a later piece (−4 decibans); with the file it speaks moderately for a period piece (+11 decibans).',
  );
});

it('names no side for a weight that is no support', () => {
  expect(turnedByShop({ periodAgainstLater: { alone: 0, withinWhole: 2.4 }, withoutShopFiles: -4.1 })).toBe(
    'If no shop’s file were known it would speak weakly for a later piece (−4 decibans); with the file it speaks for neither (+2 decibans).',
  );
  expect(turnedByShop({ periodAgainstLater: { alone: 0, withinWhole: 3.2 }, withoutShopFiles: -0.4 })).toBe(
    'If no shop’s file were known it would speak for neither (0 decibans); with the file it speaks weakly for a period piece (+3 decibans).',
  );
});

it('speaks from a turn of three decibans on, and never where a limit leaves no number', () => {
  const weighs = (withinWhole: number | null) => ({
    periodAgainstLater: { alone: 0, withinWhole },
    withoutShopFiles: 4,
  });
  expect(turnedByShop(weighs(7))).toContain('+7');
  expect(turnedByShop(weighs(6.9))).toBeUndefined();
  expect(turnedByShop(weighs(null))).toBeUndefined();
});

it('says nothing where no file holds the habit, or the file turns nothing', () => {
  expect(turnedByShop({ periodAgainstLater: { alone: 0, withinWhole: 5 } })).toBeUndefined();
  expect(
    turnedByShop({ periodAgainstLater: { alone: 0, withinWhole: 5 }, withoutShopFiles: 4 }),
  ).toBeUndefined();
});
