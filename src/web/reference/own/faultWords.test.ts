import { expect, test } from 'vitest';
import { inSheetWords } from './faultWords.ts';

test.each([
  [
    'name',
    'name is missing. Add it. Wanted: text. A right one: See docs/knowledge.md for a whole entry.',
    '“Name” is still blank.',
  ],
  ['habits/0/sign', 'habits → 0 → sign is missing. Add it. Wanted: text.', '“Sign” is still blank.'],
  [
    'minutes',
    'minutes says "soon", which does not fit. Wanted: a number. A right one: minutes: 1',
    '“Minutes it takes” says "soon", which does not fit. Wanted: a number.',
  ],
  [
    'shows/period',
    'shows → period says "1, –", which does not fit. Wanted: a figure is written "98, 95–99".',
    '“Work of the period” says "1, –", which does not fit. Wanted: a figure is written "98, 95–99".',
  ],
  ['', 'It is there twice. Choose another.', 'It is there twice. Choose another.'],
])('%s: %s', (path, message, said) => {
  const kind = path.startsWith('habits') ? 'shop' : 'sign';
  expect(inSheetWords({ path, message }, kind)).toEqual({ path, message: said });
});

test('a state without a figure is said at that state', () => {
  const fault = {
    path: 'shows',
    message: 'It hangs on making but has no figure for period. Add a row "period" under shows.',
  };
  expect(inSheetWords(fault, 'sign')).toEqual({
    path: 'shows/period',
    message: 'The figures for “Work of the period” are still blank.',
  });
});
