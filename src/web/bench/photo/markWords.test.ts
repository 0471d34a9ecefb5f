import { expect, test } from 'vitest';
import { directionOf } from './directionOf.ts';
import { ratioWords } from './ratioWords.ts';

test('ratios keep their side in words', () => {
  expect([12.4, 1.5, 1, 0.25].map(ratioWords)).toEqual([
    '12 to 1 for',
    '1.5 to 1 for',
    'neither for nor against',
    '4 to 1 against',
  ]);
});

test('a line has one direction, whichever end was touched first', () => {
  expect(
    directionOf([
      [0, 0],
      [0, 9],
    ]),
  ).toBe(90);
  expect(
    directionOf([
      [0, 9],
      [0, 0],
    ]),
  ).toBe(90);
  expect(
    directionOf([
      [5, 5],
      [1, 1],
    ]),
  ).toBeCloseTo(45, 9);
  expect(
    directionOf([
      [5, 5],
      [5, 5],
    ]),
  ).toBeUndefined();
});
