import { expect, it } from 'vitest';
import { conditionsInWords, makingInWords, partsInWords } from './makingInWords.ts';
import type { Weighing } from './weighing.ts';

const parts = (seen: [number, number], unseen: [number, number]) =>
  partsInWords({
    condition: {
      ifOfThePeriod: [],
      seen: { parts: seen[0], original: seen[1] },
      unseen: { parts: unseen[0], laterExpected: unseen[1] },
    },
  });

it('tells the making by the scale’s words', () => {
  const making = {
    leading: 'later-copy',
    answers: [
      { id: 'later-copy', probability: 0.93, low: 0.8, high: 0.97 },
      { id: 'of-the-period', probability: 0.05, low: 0, high: 0.1 },
    ],
  } as unknown as Weighing['making'];
  expect(makingInWords({ making })).toBe('very probably a later copy');
});

it('tells the condition as it would be, the most probable first', () => {
  const condition = {
    ifOfThePeriod: [
      { id: 'period-intact', share: 0.17 },
      { id: 'period-repaired', share: 0.8 },
      { id: 'period-altered', share: 0.03 },
    ],
  } as unknown as Weighing['condition'];
  expect(conditionsInWords({ condition })).toBe(
    'with later repairs, 80 in 100; substantially intact, 17 in 100; altered or improved, 3 in 100',
  );
});

it('counts the parts seen original and those to be expected later among the others', () => {
  expect(parts([7, 5], [12, 1.2])).toBe(
    '5 of the 7 parts that were looked at are original; of the 12 not looked at, about 1 is to be expected later.',
  );
  expect(parts([7, 1], [12, 2.6])).toBe(
    '1 of the 7 parts that were looked at is original; of the 12 not looked at, about 3 are to be expected later.',
  );
  expect(parts([2, 2], [0, 0])).toBe(
    '2 of the 2 parts that were looked at are original; no part was left out.',
  );
  expect(parts([0, 0], [19, 0.2])).toBe(
    'No part was looked at; of the 19, hardly any is to be expected later.',
  );
});
