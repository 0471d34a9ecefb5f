import { expect, it } from 'vitest';
import { placeInWords } from './placeInWords.ts';

const ifOfThePeriod = { there: 0.75, elsewhere: 0.05, unlisted: 0.2 };

it('tells of the claimed place apart from the age, with both figures where the claim moves one', () => {
  const place = {
    claimed: 'Northam',
    known: true,
    ifOfThePeriod,
    ofThePeriod: { asClaimed: 0.62, noneClaimed: 0.56 },
  };
  expect(placeInWords({ place })).toEqual([
    'Whether it is from Northam is a question of its own.',
    'If it is of the period, that its habits are those known of Northam is probable (75 in 100); those of another place in the files, improbable (5 in 100); of none in the files, possible (20 in 100).',
    'The claim is no finding: with it, that the piece is of the period is more probable than not (62 in 100); had no place been claimed, more probable than not (56 in 100).',
  ]);
});

it('says that the files do not know the place, and that the claim makes no odds', () => {
  const place = {
    claimed: 'Elsewhere',
    known: false,
    ifOfThePeriod,
    ofThePeriod: { asClaimed: 0.6, noneClaimed: 0.601 },
  };
  const [, files, claim] = placeInWords({ place });
  expect(files).toContain('nothing here speaks for or against it');
  expect(claim).toContain('makes no odds');
});

it('says nothing where no place was claimed', () => {
  expect(placeInWords({})).toEqual([]);
});
