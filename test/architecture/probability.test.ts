import { readdir, readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { doubtFaults, probabilityFaults } from './probabilityFaults.ts';
import { shownTexts } from './shownTexts.ts';

test('every probability is worded by the one scale, and every doubt covers the same', async () => {
  const names = (await readdir('src', { recursive: true })).filter(
    (name) => /\.tsx?$/.test(name) && !/\.test\.tsx?$|(^|\/)testing\//.test(name),
  );
  const sources = await Promise.all(
    names.map(async (name) => ({ path: `src/${name}`, source: await readFile(`src/${name}`, 'utf8') })),
  );
  for (const room of ['web', 'opinion', 'cli', 'server', 'evidence', 'calculations'])
    expect(
      sources.some(({ path }) => path.startsWith(`src/${room}/`)),
      room,
    ).toBe(true);
  expect(sources.filter(({ source }) => source.includes('told(')).length).toBeGreaterThan(10);
  expect(probabilityFaults(sources.flatMap(({ path, source }) => shownTexts(path, source)))).toEqual([]);
  expect(sources.flatMap(({ path, source }) => doubtFaults(path, source))).toEqual([]);
}, 60_000);

test.each([
  ['a band of the scale', "export const a = 'It is very probable that it is old.';"],
  ['a word of the scale', "export const a = 'Probably old.';"],
  ['a word beside it', 'export const a = <p>It is likely to be old.</p>;'],
  ['an even chance', 'export const a = (y) => `an even chance in $' + '{y}`;'],
  ['a chance', "export const a = 'There is a fair chance of it.';"],
  ['a count in tens', "export const a = 'nine times in ten';"],
  ['a count of ten', "export const a = 'It is old in 7 out of 10.';"],
  ['tenths', 'export const a = <caption>The span that holds nine tenths</caption>;'],
  ['per cent', "export const a = 'We are 90 % sure.';"],
  ['as likely as not', "export const a = 'As likely as not it is old.';"],
  ['an adverb of certainty', "export const a = 'It is undoubtedly old.';"],
])('reports %s', (_, source) => {
  expect(probabilityFaults(shownTexts('src/web/a.tsx', source))).toHaveLength(1);
});

test.each([
  ['a likelihood ratio', "export const a = 'The likelihood ratio, and the likelihoods of aging.';"],
  ['a comparison', "export const a = 'That is three times as probable of old work as of recent.';"],
  ['counts of the scale', "export const a = '90 in 100, at most 999 in 1000';"],
  ['chance itself', "export const a = 'The wear follows use better than chance would.';"],
  ['a tenth of a length', "export const a = 'A tenth of the opening shows.';"],
])('leaves %s alone', (_, source) => {
  expect(probabilityFaults(shownTexts('src/web/a.tsx', source))).toEqual([]);
});

test('reports a doubt that is not told through the one coverage', () => {
  expect(doubtFaults('src/web/a.ts', 'const a = `3 mm, give or take $' + '{sigmaMm} mm`;')).toHaveLength(1);
  expect(doubtFaults('src/web/a.ts', 'const a = `3 ± $' + '{(2.5 * sigmaMm).toFixed(1)} mm`;')).toHaveLength(
    1,
  );
  expect(doubtFaults('src/web/a.ts', 'const a = `3 ± $' + '{told(sigmaMm)} mm`;')).toEqual([]);
});
