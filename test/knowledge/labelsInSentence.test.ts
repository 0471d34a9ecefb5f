import { readdir, readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { inSentence } from '../../src/knowledge/inSentence.ts';
import { shownTexts } from '../architecture/shownTexts.ts';

/** Words that are written with a capital within sentences and never without: proper names. */
function properNames(texts: readonly string[]): Set<string> {
  const words = (pattern: RegExp) => new Set(texts.flatMap((text) => text.match(pattern) ?? []));
  const small = words(/\b[a-z]+\b/g);
  return new Set([...words(/(?<=[a-z,;] )[A-Z][a-z]+\b/g)].filter((word) => !small.has(word.toLowerCase())));
}

it('keeps the capital of every label that begins with a proper name', async () => {
  const names = (await readdir('knowledge', { recursive: true })).filter((name) =>
    /^(forms|signs|alterations|making|woods).*\.yaml$/.test(name),
  );
  const sources = await Promise.all(
    names.map(async (name) => ({ name, text: await readFile(`knowledge/${name}`, 'utf8') })),
  );
  const proper = properNames(
    sources.flatMap(({ name, text }) => shownTexts(`knowledge/${name}`, text).map((each) => each.text)),
  );
  expect(proper).toContain('Windsor');
  const labels = sources.flatMap(({ text }) =>
    [...text.matchAll(/\bname: "?([A-Z][^",}\n]*)/g)].map(([, label]) => label ?? ''),
  );
  expect(labels.length).toBeGreaterThan(500);
  const begun = labels.filter((label) => proper.has(/^[A-Z][a-z]+/.exec(label)?.[0] ?? ''));
  expect(begun).toContain('Windsor chair');
  expect(begun.filter((label) => inSentence(label) !== label)).toEqual([]);
});
