import { execFile } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { parse } from 'yaml';
import { caseFromPiece } from '../../src/evidence/caseFromPiece.ts';
import { compileKnowledge } from '../../src/knowledge/compileKnowledge.ts';
import type { KnowledgeFile } from '../../src/knowledge/readEntries.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { weighCase } from '../../src/weighing/weighCase.ts';
import type { Weighing } from '../../src/weighing/weighing.ts';
import { effectWords } from './effectWords.ts';

const run = promisify(execFile);

/**
 * Weighs the worked examples with the knowledge of a commit and with that of the folder, and says what moved.
 *
 * @param home   the working copy: holds examples/ and, at the commit, knowledge/
 * @param say    told each line
 */
export async function showEffect(
  home: string,
  now: Knowledge,
  commit: string,
  yearNow: number,
  say: (line: string) => void = console.log,
): Promise<void> {
  const { knowledge: before, faults } = compileKnowledge(await filesAt(home, commit));
  if (before === undefined) {
    say(`\nThe knowledge at ${commit} can't be weighed with: it has ${faults.length} faults.`);
    return;
  }
  say(`\nEffect on the worked examples, from ${commit} (${before.version}) to now (${now.version}):`);
  const examples = await readExamples(join(home, 'examples'));
  if (examples.length === 0) say('There are no worked examples to weigh.');
  for (const example of examples) {
    say(`\n${example.title}`);
    const [was, is] = [before, now].map((knowledge) => weighed(example, knowledge, yearNow));
    if (was === undefined || is === undefined)
      say(
        '  It can’t be weighed with both: one of them lacks what it needs (its form, or its starting odds).',
      );
    else for (const line of effectWords(was, is)) say(`  ${line}`);
  }
}

function weighed(example: Piece, knowledge: Knowledge, yearNow: number): Weighing | undefined {
  const result = weighCase({ ...caseFromPiece(example), draws: 0 }, knowledge, { yearNow });
  return result.ok ? result.output : undefined;
}

async function filesAt(home: string, commit: string): Promise<KnowledgeFile[]> {
  const git = async (...words: string[]) =>
    (await run('git', words, { cwd: home, maxBuffer: 64 * 1024 * 1024 })).stdout;
  const names = (await git('ls-tree', '-r', '--name-only', commit, 'knowledge/')).split('\n');
  const yaml = names.filter((name) => name.endsWith('.yaml'));
  return Promise.all(
    yaml.map(async (name) => ({
      path: name.replace(/^knowledge\//, ''),
      text: await git('show', `${commit}:${name}`),
    })),
  );
}

async function readExamples(folder: string): Promise<Piece[]> {
  const names = await readdir(folder).catch(() => []);
  const examples = await Promise.all(
    names.sort().map((name) => readFile(join(folder, name, 'piece.yaml'), 'utf8').catch(() => undefined)),
  );
  return examples.filter((text) => text !== undefined).map((text) => piece.parse(parse(text)));
}
