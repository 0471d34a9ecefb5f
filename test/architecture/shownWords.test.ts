import { readdir, readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { shownFaults } from './retiredWords.ts';
import { shownTexts } from './shownTexts.ts';

const forTests = /\.test\.tsx?$|\/testing\//;

test('what a person reads is in the words of the trade and in one spelling', async () => {
  const folders = ['src', 'knowledge', 'examples', 'docs'];
  const under = await Promise.all(
    folders.map(async (folder) =>
      (await readdir(folder, { recursive: true })).map((name) => `${folder}/${name}`),
    ),
  );
  const paths = ['README.md', 'CHANGELOG.md', ...under.flat()].filter(
    (path) => /\.(tsx?|yaml|md)$/.test(path) && !forTests.test(path),
  );
  const texts = await Promise.all(paths.map(async (path) => shownTexts(path, await readFile(path, 'utf8'))));
  for (const start of ['src/web', 'src/opinion', 'knowledge', 'examples', 'docs', 'README'])
    expect(
      texts.flat().some(({ path }) => path.startsWith(start)),
      start,
    ).toBe(true);
  expect(shownFaults(texts.flat())).toEqual([]);
}, 60_000);

test.each([
  [
    'a retired button',
    'src/web/a.tsx',
    'export const A = () => (\n  <button>\n    Draw nothing\n  </button>\n);',
  ],
  ['a retired label', 'src/web/a.tsx', 'export const a = <p aria-label="Nearness" />;'],
  ['a retired reading', 'src/piece/a.ts', "export const a = { title: 'Made to deceive' };"],
  [
    'a retired sentence in pieces',
    'src/web/a.ts',
    'export const a = (n) => `It would be $' + '{n} for a later one`;',
  ],
  ['a British label', 'src/web/a.ts', "export const a = 'Colour';"],
  ['a British phrase', 'src/web/a.tsx', 'export const a = <p>the grey card</p>;'],
  ['a British sign', 'knowledge/signs/a.yaml', '- id: a\n  look: Look at the moulding.\n'],
  ['a British note on a work', 'knowledge/sources.yaml', '- id: a\n  note: Oxidised wood.\n'],
  ['a British word in the docs', 'docs/a.md', 'Kept in millimetres.\n'],
])('reports %s', (_, path, source) => {
  expect(shownFaults(shownTexts(path, source))).toHaveLength(1);
});

test.each([
  [
    'ids and class names',
    'src/web/a.tsx',
    "import a from './colour tool';\nexport const b = <p className=\"grey centre\">{a('photo.colour-balance', 'ageing')}</p>;",
  ],
  [
    'ids named in a sentence',
    'src/web/a.ts',
    "export const a = 'Runs photo.colour-balance and colourSpace.';",
  ],
  ['comments', 'src/web/a.ts', '// The grey centre of the making.\nexport {};'],
  ['titles of works', 'knowledge/sources.yaml', '- id: a\n  title: The Colour of Old Wood\n'],
  ['drawings', 'knowledge/forms/a.yaml', '- path: "@panelled 1 M 0 moulding-2"\n'],
  ['code in the docs', 'docs/a.md', 'Give it a `centre`.\n'],
])('leaves %s alone', (_, path, source) => {
  expect(shownFaults(shownTexts(path, source))).toEqual([]);
});
