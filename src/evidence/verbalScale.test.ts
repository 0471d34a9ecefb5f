import { expect, it } from 'vitest';
import { scaleBand, verbalScale, weightWords } from './verbalScale.ts';

// The bounds of the example scale of the ENFSI guideline for evaluative reporting (2015), as decibans of the likelihood
// ratios 1, 10, 100, 1,000, 10,000 and 1,000,000 (from memory); below 1.26 times, one deciban, nothing can be felt (Good, from
// memory).
it.each([
  [0.99, 'no support either way'],
  [1, 'weak support'],
  [9.99, 'weak support'],
  [10, 'moderate support'],
  [19.99, 'moderate support'],
  [20, 'moderately strong support'],
  [30, 'strong support'],
  [39.99, 'strong support'],
  [40, 'very strong support'],
  [59.99, 'very strong support'],
  [60, 'extremely strong support'],
  [500, 'extremely strong support'],
])('%s decibans, on either side, are %s', (decibans, words) => {
  expect(scaleBand(decibans).words).toBe(words);
  expect(scaleBand(-decibans).words).toBe(words);
  expect(weightWords(decibans, 'one', 'other')).toBe(
    decibans < 1 ? words : `${words} for one rather than other`,
  );
  if (decibans >= 1)
    expect(weightWords(-decibans, 'one', 'other')).toBe(`${words} for other rather than one`);
});

it('has no gap between its bands', () => {
  verbalScale.bands.forEach((band, i) => {
    expect(band.toDecibans).toBe(verbalScale.bands[i + 1]?.fromDecibans ?? null);
  });
});
