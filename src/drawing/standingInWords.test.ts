import { expect, it } from 'vitest';
import { hatchWords, standings, standingWords } from './hatching.ts';
import { standingInWords } from './standingInWords.ts';

const names = { crest: 'crest rail', splat: 'splat', foot: 'left foot' };

it('says of each part how it stands, each once, and of those not looked at that they were not', () => {
  const standing = { crest: 'of-the-making', splat: 'not-looked-at', foot: 'repair' } as const;
  expect(standingInWords(['splat', 'crest', 'foot', 'crest'], names, standing)).toBe(
    `${standingWords['of-the-making']}: crest rail; ${standingWords.repair}: left foot; not looked at: splat`,
  );
  expect(standingInWords(['crest'], names, {})).toBe('');
});

it('has a word and a hatch in words of its own for each standing', () => {
  for (const words of [standingWords, hatchWords])
    expect(new Set(standings.map((each) => words[each])).size).toBe(standings.length);
});
