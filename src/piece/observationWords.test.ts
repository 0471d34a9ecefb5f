import { expect, it } from 'vitest';
import { expectedAtFirst, expectedInWords, saysNothing, shortWords } from './observationWords.ts';

it('tells how far it would be expected, the most first, every kind of piece by its own word', () => {
  expect(
    expectedInWords({
      original: 'seldom',
      repaired: 'often',
      altered: 'nearly always',
      married: 'often',
      copied: 'hardly ever',
      faked: 'sometimes',
    }),
  ).toBe(
    'nearly always if altered; often if repaired or married; sometimes if made to pass as older; seldom if original; hardly ever if a later copy',
  );
});

it('says plainly that it parts nothing where all six words are the same, and only then', () => {
  expect(saysNothing(expectedAtFirst)).toBe(true);
  expect(expectedInWords(expectedAtFirst)).toBe('sometimes, whatever the piece is');
  for (const history of ['original', 'repaired', 'altered', 'married', 'copied', 'faked'] as const)
    expect(saysNothing({ ...expectedAtFirst, [history]: 'often' })).toBe(false);
});

it('cuts long words at the end of one, and leaves short ones as they are', () => {
  expect(shortWords(' Two scribe\nlines. ')).toBe('Two scribe lines');
  expect(shortWords('The rail was cut down, and glued again', 24)).toBe('The rail was cut down …');
  expect(shortWords('x'.repeat(100), 20).length).toBeLessThanOrEqual(22);
});
