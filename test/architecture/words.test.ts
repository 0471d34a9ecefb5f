import { readdir, readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { wordFaults } from './wordFaults.ts';

async function textsUnder(folder: string): Promise<{ path: string; text: string }[]> {
  const names = (await readdir(folder, { recursive: true })).map((name) => `${folder}/${name}`);
  const texts = names.filter((name) => /\.(ts|tsx|css|html|yaml|md|mjs|typ)$/.test(name));
  return Promise.all(texts.map(async (path) => ({ path, text: await readFile(path, 'utf8') })));
}

test('nothing in the house is owned up to be unfinished, tied to one machine, or too long', async () => {
  const folders = ['src', 'knowledge', 'docs', 'scripts', 'bin'];
  const files = (await Promise.all(folders.map(textsUnder))).flat();
  for (const folder of folders) expect(files.some((file) => file.path.startsWith(`${folder}/`))).toBe(true);
  expect(wordFaults(files).map((fault) => `${fault.path}:${fault.line} ${fault.what}`)).toEqual([]);
});

test.each([
  ['a note to self', 'src/a.ts', '\n// TODO later\n', 2],
  ['a stand-in', 'src/a.ts', 'const stub = 1;\n', 1],
  ['an HTML attribute', 'src/a.tsx', '<input placeholder="x" />\n', 1],
  ['a promise', 'docs/a.md', 'Export: coming soon.\n', 1],
  ['a path of one machine', 'src/a.ts', `const path = '/${'root'}/x';\n`, 1],
  ['a path at home', 'docs/a.md', 'See /home/ann/notes.\n', 1],
  ['a long file', 'src/a.ts', 'x;\n'.repeat(401), 401],
])('reports %s', (_, path, text, line) => {
  expect(wordFaults([{ path, text }])).toMatchObject([{ path, line }]);
});

test('leaves sound words and long lists of works alone', () => {
  const files = [
    { path: 'src/a.ts', text: 'export const stubby = "a stubborn leg at work/piece";\n' },
    { path: 'knowledge/sources.yaml', text: '- id: a\n'.repeat(500) },
  ];
  expect(wordFaults(files)).toEqual([]);
});
