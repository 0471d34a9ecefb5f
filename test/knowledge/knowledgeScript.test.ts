import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { KnowledgeFile } from '../../src/knowledge/readEntries.ts';
import { plant, plantedKnowledge } from '../architecture/plantedKnowledge.ts';
import { soundKnowledge } from '../architecture/soundKnowledge.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'underside-knowledge-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function written(name: string, files: readonly KnowledgeFile[]): Promise<string> {
  const home = join(folder, name);
  for (const file of files) {
    await mkdir(dirname(join(home, file.path)), { recursive: true });
    await writeFile(join(home, file.path), file.text);
  }
  return home;
}

function runScript(...words: string[]): Promise<{ code: number; out: string }> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['--import', 'tsx', 'scripts/knowledge.ts', ...words], (error, out, err) =>
      resolve({ code: error === null ? 0 : Number(error.code), out: out + err }),
    );
  });
}

test('sound knowledge: counts, what no published work is cited by, files for editors, exit 0', async () => {
  const home = await written('sound', soundKnowledge);
  const json = join(folder, 'knowledge.json');
  const { code, out } = await runScript(
    '--folder',
    home,
    '--json',
    json,
    '--schema',
    join(folder, 'schemas'),
  );
  expect(out).toContain('1 form, 2 signs in 1 family, 1 alteration, 1 shop or region, 2 works');
  expect(out).toMatch(/Figures: 2 from a published work/);
  expect(out).toContain('Spans of years: 1 from a published work, 0 by');
  expect(out).toContain('  sign: leg-square\n');
  expect(code).toBe(0);
  expect(Object.keys(JSON.parse(await readFile(json, 'utf8')).signs)).toEqual(['leg-square', 'saw-arcs']);
  const schema = JSON.parse(await readFile(join(folder, 'schemas', 'signs.schema.json'), 'utf8'));
  expect(schema.properties.signs.items.required).toContain('hangsOn');
  expect(schema.properties.signs.items.required).not.toContain('needs');
}, 30_000);

test('two faults in two files: both printed with file, line, entry, mend and a right example; exit 1', async () => {
  const [first] = plantedKnowledge['figures-in-order'] ?? [];
  const [second] = plantedKnowledge['rows-complete'] ?? [];
  if (first === undefined || second === undefined) throw new RangeError('the plants of this test are gone');
  const files = plant(first).map(
    (file) => plant(second).find((each) => each.path === second.file && each.path === file.path) ?? file,
  );
  const { code, out } = await runScript('--folder', await written('faulty', files));
  expect(code).toBe(1);
  expect(out).toMatch(
    /^knowledge\/shops\/mill-lane\.yaml:8 {2}mill-lane — The figure "5, 1–4" has its best outside/m,
  );
  expect(out).toMatch(/^ {4}right: period: "86, 72–94"$/m);
  expect(out).toMatch(/^knowledge\/signs\/saw-marks\.yaml:\d+ {2}leg-square — .*no figure for machine-copy/m);
  expect(out).toContain('2 faults in the knowledge files.');
}, 30_000);
