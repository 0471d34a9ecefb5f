import { expect, it } from 'vitest';
import reference from '../../test/reference/verbalScale.json' with { type: 'json' };
import { boundsInWords, isSupport, ratioToOne, scaleBand, verbalScale, weightWords } from './verbalScale.ts';

const decibans = (ratio: number) => 10 * Math.log10(ratio);

it.each(reference.bands)('a ratio of $from to $to is $words', ({ from, to, words }) => {
  const just = to === null ? 1e9 : to * (1 - 1e-9);
  for (const ratio of [from, Math.sqrt(from * just), just])
    for (const size of [decibans(ratio), -decibans(ratio)]) expect(scaleBand(size).words).toBe(words);
});

it('counts what the published table leaves without words, from 1 to 2, as no support, and says so', () => {
  expect(scaleBand(decibans(1.99)).words).toBe('no support either way');
  expect(scaleBand(decibans(2)).words).toBe('weak support');
  expect([0, 3, -3, 3.02, -3.02].map(isSupport)).toEqual([false, false, false, true, true]);
  expect(verbalScale.standing).toContain(
    'a ratio between 1 and 2, for which its table has no words, counts as no support',
  );
});

it('names the side a weight favors, and no side where it favors neither', () => {
  expect(weightWords(12, 'one', 'other')).toBe('moderate support for one rather than other');
  expect(weightWords(-12, 'one', 'other')).toBe('moderate support for other rather than one');
  expect(weightWords(-2, 'one', 'other')).toBe('no support either way');
});

it('has no gap between its bands', () => {
  verbalScale.bands.forEach((band, i) => {
    expect(band.toRatio).toBe(verbalScale.bands[i + 1]?.fromRatio ?? null);
  });
});

it('prints the bounds as ratios and in whole decibans', () => {
  expect(verbalScale.bands.map((band) => Object.values(boundsInWords(band)))).toEqual([
    ['1 to 2', '0 to 3'],
    ['2 to 10', '3 to 10'],
    ['10 to 100', '10 to 20'],
    ['100 to 1,000', '20 to 30'],
    ['1,000 to 10,000', '30 to 40'],
    ['10,000 to 1,000,000', '40 to 60'],
    ['1,000,000 and more', '60 and more'],
  ]);
});

// 10^0.6 = 3.981, 10^1.23 = 16.98, 10^3.61 = 4074, 10^6.4 = 2,511,886.
it.each([
  [6, 'about 4 to 1'],
  [-12.3, 'about 17 to 1'],
  [36.1, 'about 4,100 to 1'],
  [64, 'about 2,500,000 to 1'],
  [0, 'about 1 to 1'],
])('%s decibans are %s', (weight, words) => {
  expect(ratioToOne(weight)).toBe(words);
});
