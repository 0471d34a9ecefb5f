import { execFileSync } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { showEffect } from '../../scripts/knowledge/showEffect.ts';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import { soundKnowledge } from '../architecture/soundKnowledge.ts';

let home: string;

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'underside-effect-'));
  const git = (...words: string[]) => execFileSync('git', words, { cwd: home, stdio: 'ignore' });
  git('init');
  for (const file of soundKnowledge) await write(`knowledge/${file.path}`, file.text);
  await write(
    'examples/stool/piece.yaml',
    `id: example-stool
title: A stool made up for a test
form: stool
features: { row: wood }
claim: { period: [1740, 1780] }
findings:
  leg-square@front-leg-left: { id: leg-square@front-leg-left, sign: leg-square, part: front-leg-left, state: present }
`,
  );
  git('add', '.');
  git('-c', 'user.name=test', '-c', 'user.email=test@example.invalid', 'commit', '-m', 'before');
});
afterAll(() => rm(home, { recursive: true, force: true }));

async function write(path: string, text: string): Promise<void> {
  await mkdir(dirname(join(home, path)), { recursive: true });
  await writeFile(join(home, path), text);
}

async function effectOf(edit: (text: string) => string): Promise<string[]> {
  const files = soundKnowledge.map((file) => ({ ...file, text: edit(file.text) }));
  const { knowledge } = compileKnowledge(files);
  if (knowledge === undefined) throw new RangeError('the edited knowledge has faults');
  const lines: string[] = [];
  await showEffect(home, knowledge, 'HEAD', 2026, (line) => lines.push(line));
  return lines;
}

test('no change: nothing moved', async () => {
  const lines = await effectOf((text) => text);
  expect(lines.join('\n')).toContain('A stool made up for a test');
  expect(lines.at(-1)).toMatch(/^ {2}Nothing moved/);
});

test('a sign that now hardly shows on period work: period falls, copies rise, the weight is told', async () => {
  const lines = await effectOf((text) =>
    text
      .replace('period: "40, 20–60"\n', 'period: "4, 2–9"\n')
      .replace('shows: "90, 70–97"', 'shows: "9, 7–12"'),
  );
  const told = lines.join('\n');
  expect(told).toMatch(/“A later copy, made by machine” rose from [\d.]+ to [\d.]+ in 100/);
  expect(told).toMatch(/“Of the period, [^”]*” fell/);
  expect(told).toMatch(/leg-square on front-leg-left by itself moved from .* to −[\d.]+ decibans\./);
});

test('a commit without knowledge says so', async () => {
  const { knowledge } = compileKnowledge(soundKnowledge);
  const lines: string[] = [];
  const empty = execFileSync('git', ['hash-object', '-t', 'tree', '--stdin'], { cwd: home, input: '' })
    .toString()
    .trim();
  if (knowledge !== undefined) await showEffect(home, knowledge, empty, 2026, (line) => lines.push(line));
  expect(lines.join('\n')).toMatch(/can't be weighed with/);
});
