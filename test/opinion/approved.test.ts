import { readFile, rm, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { opinionTypst } from '../../src/opinion/opinionTypst.ts';
import { template } from '../../src/opinion/typst/template.ts';
import { fixedOpinion } from '../kits/fixedOpinion.ts';

const approved = fileURLToPath(new URL('../approved/opinion.typ', import.meta.url));
const fresh = fileURLToPath(new URL('../approved/opinion.new.typ', import.meta.url));

it('words and orders an opinion as it was approved by eye', async () => {
  const { source } = opinionTypst(fixedOpinion(), {
    paper: 'a4',
    plates: new Map([['one', { widthPx: 320, heightPx: 200 }]]),
  });
  const body = source.replace(template, '');
  const before = await readFile(approved, 'utf8').catch(() => '');
  if (body === before) await rm(fresh, { force: true });
  else await writeFile(fresh, body);
  expect(
    body,
    'test/approved/opinion.new.typ holds the new wording: read both, and if the new one is right, let it take the place of opinion.typ',
  ).toBe(before);
});
