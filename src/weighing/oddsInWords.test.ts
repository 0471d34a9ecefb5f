import { expect, it } from 'vitest';
import { oddsInWords } from './oddsInWords.ts';

const making = {
  defaultOdds: 'even',
  startingOdds: { even: { name: 'Even' }, sceptical: { name: 'Skeptical' } },
} as never;

it('says that the examiner chose the odds only where they did', () => {
  expect(oddsInWords({}, { making })).toBe('even starting odds, left as they are,');
  expect(oddsInWords({ startingOdds: 'sceptical' }, { making })).toBe(
    'skeptical starting odds, chosen by the examiner,',
  );
  expect(oddsInWords({ startingOdds: 'gone' }, { making })).toBe(
    'the starting odds, chosen by the examiner,',
  );
});
