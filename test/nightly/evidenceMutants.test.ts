import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pureRooms } from '../../lint/roomRules.ts';
import { rooms } from '../../lint/rooms.ts';
import { evidenceMutants, evidenceTests } from '../kits/evidenceMutants.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Runs the tests of the weighing in a folder; whether all passed, and what was said. */
function runTests(folder: string): { passed: boolean; said: string } {
  const vitest = join(folder, 'node_modules', 'vitest', 'vitest.mjs');
  const run = spawnSync(process.execPath, [vitest, 'run', '--bail=1', ...evidenceTests], {
    cwd: folder,
    encoding: 'utf8',
    env: { PATH: process.env.PATH, NO_COLOR: '1' },
  });
  return { passed: run.status === 0, said: `${run.stdout}\n${run.stderr}` };
}

// Each hand-made fault is put into a copy of the code: the tests must see it, by an expectation and not by falling over.
describe('every hand-made fault in what is told from the sums is seen', () => {
  let folder = '';
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'underside-mutants-'));
    mkdirSync(join(folder, 'src'));
    for (const room of pureRooms(rooms))
      cpSync(join(root, 'src', room), join(folder, 'src', room), { recursive: true });
    cpSync(join(root, 'test', 'reference'), join(folder, 'test', 'reference'), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'dir');
    writeFileSync(join(folder, 'package.json'), '{ "type": "module", "private": true }');
    writeFileSync(
      join(folder, 'vitest.config.mjs'),
      "export default { test: { include: ['src/**/*.test.ts'], testTimeout: 120000 } };",
    );
  });

  it('and nothing is seen where there is none', () => {
    const { passed, said } = runTests(folder);
    expect(passed, said).toBe(true);
  });

  it.each(evidenceMutants)('$name', ({ file, find, replace }) => {
    const path = join(folder, file);
    const right = readFileSync(path, 'utf8');
    writeFileSync(
      path,
      right.replace(find, () => replace),
    );
    try {
      const { passed, said } = runTests(folder);
      expect(passed).toBe(false);
      expect(said).toContain('AssertionError');
    } finally {
      writeFileSync(path, right);
    }
  });
});
