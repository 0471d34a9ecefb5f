import { expect, test } from 'vitest';
import { otherHandWords } from './otherHandWords.ts';

test('a name that is not the examiner’s is warned of, with both names', () => {
  expect(otherHandWords('Perrin Halloway', 'Ida Marsh')).toBe(
    'The examiner of this piece is “Perrin Halloway”, and you are signing as “Ida Marsh”: the opinion would bear both names. Sign as the examiner, or set right who examined the piece.',
  );
  expect(otherHandWords('Perrin Halloway', 'Perrin Hallowey')).toBeDefined();
});

test.each([
  ['Perrin Halloway', 'Perrin Halloway'],
  ['Perrin J. Halloway', ' perrin  j  halloway '],
  ['', 'Ida Marsh'],
  ['Perrin Halloway', ' '],
])('%j and %j are one, or nobody is named yet', (examiner, name) => {
  expect(otherHandWords(examiner, name)).toBeUndefined();
});
