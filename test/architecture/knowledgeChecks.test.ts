import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { checks } from '../../src/knowledge/checks/checks.ts';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import { plant, plantedKnowledge } from './plantedKnowledge.ts';
import { soundKnowledge } from './soundKnowledge.ts';

test('the sound files have no fault, so that every fault below is the planted one', () => {
  const { knowledge, faults } = compileKnowledge(soundKnowledge);
  expect(faults).toEqual([]);
  expect(Object.keys(knowledge?.signs ?? {})).toEqual(['leg-square', 'saw-arcs']);
});

test('every check has a planted fault, and every planted fault a check', () => {
  expect(Object.keys(plantedKnowledge).sort()).toEqual(checks.map((check) => check.id).sort());
  for (const plants of Object.values(plantedKnowledge)) expect(plants.length).toBeGreaterThan(0);
});

test('every check says in one sentence what it protects', () => {
  for (const check of checks) expect(check.protects).toMatch(/^[A-Z].*\.$/);
});

describe.each(Object.entries(plantedKnowledge))('%s', (id, plants) => {
  test.each(plants)('reports $planted', (planted) => {
    const files = plant(planted);
    const found = compileKnowledge(files).faults.filter((fault) => fault.code === `knowledge.${id}`);
    const lines = files.flatMap((file) =>
      file.text.split('\n').map((text, index) => ({ file: file.path, line: index + 1, text })),
    );
    const named = found.filter((fault) => {
      const there = lines.find((each) => each.file === fault.file && each.line === fault.line);
      return fault.entry === planted.entry && there?.text.includes(planted.onLine);
    });
    expect(named.length, JSON.stringify(found, null, 2)).toBeGreaterThan(0);
    expect(named[0]?.what).toMatch(/^\S.*\.$/);
    expect(named[0]?.mend).toMatch(/\.$/);
    expect(named[0]?.example).toMatch(/\S/);
  });
});

test('all faults come at once, each with its file and line', () => {
  const files = plant({
    planted: 'two in one file',
    file: 'signs/saw-marks.yaml',
    edit: ['minutes: 1', 'minutes: one'],
    entry: '',
    onLine: '',
  }).map((file) =>
    file.path === 'shops/mill-lane.yaml' ? { ...file, text: file.text.replace('[stool]', '[bench]') } : file,
  );
  const { knowledge, faults } = compileKnowledge(files);
  expect(knowledge).toBeUndefined();
  expect(faults.map((fault) => fault.code)).toEqual(['knowledge.references-exist', 'knowledge.shape']);
});

test('without any form one fault says so, not one for every part', () => {
  const { faults } = compileKnowledge(soundKnowledge.filter((file) => !file.path.startsWith('forms/')));
  expect(faults).toMatchObject([{ code: 'knowledge.references-exist', file: 'forms' }]);
});

test('unreadable YAML, a doubled key and a stray file are faults with their line', () => {
  const faultsOf = (path: string, text: string) =>
    compileKnowledge([...soundKnowledge, { path, text }]).faults;
  expect(faultsOf('shops/other.yaml', 'id: other\nid: again\n')).toMatchObject([
    { code: 'knowledge.yaml', file: 'shops/other.yaml', line: 2 },
  ]);
  expect(faultsOf('shops/other.yaml', 'id: other\nname: "no end\n')[0]?.code).toBe('knowledge.yaml');
  expect(faultsOf('forms/old/stool.yaml', 'id: stool\n')[0]?.code).toBe('knowledge.file-place');
  expect(faultsOf('signs/nails.yaml', 'family: nails\nsigns: []\n')[0]?.code).toBe('knowledge.file-form');
});

test('an entry of the user’s own is marked, and a faulty one is left out without harm', () => {
  const own = (id: string, minutes: string) => ({
    path: 'signs/mine-nails.yaml',
    text: `family: nails\nname: Nails\nsigns:\n  - id: ${id}\n    name: A nail\n    look: A nail is there.\n    on: [whole]\n    hangsOn: tooling\n    minutes: ${minutes}\n    shows: { hand: "40, 20–60", early-machine: "50, 30–70", modern-machine: "60, 40–80" }\n    basis: { by: judgement, why: Mine. }\n`,
  });
  const good = compileKnowledge([...soundKnowledge, own('nail-there', '1')]);
  expect(good.faults).toEqual([]);
  expect(good.knowledge?.signs['nail-there']).toMatchObject({ mine: true, family: 'nails' });
  const bad = compileKnowledge([...soundKnowledge, own('nail-there', 'soon')]);
  expect(bad.faults).toMatchObject([{ code: 'knowledge.shape', entry: 'nail-there' }]);
  expect(bad.knowledge?.signs['nail-there']).toBeUndefined();
  expect(Object.keys(bad.knowledge?.signs ?? {})).toHaveLength(2);
});

test('the version changes with any text and not with the order of the files', () => {
  const version = (files: typeof soundKnowledge) => compileKnowledge(files).knowledge?.version;
  const first = version(soundKnowledge);
  expect(first).toMatch(/^[0-9a-f]{16}$/);
  expect(version([...soundKnowledge].reverse())).toBe(first);
  const changed = soundKnowledge.map((file, index) =>
    index === 0 ? { ...file, text: `${file.text}# a note\n` } : file,
  );
  expect(version(changed)).not.toBe(first);
});

test('the guidelines list every check with what it protects', async () => {
  const page = await readFile('docs/knowledge.md', 'utf8');
  for (const check of checks) expect(page).toContain(`| \`${check.id}\` | ${check.protects} |`);
});
