/** Finds a second Node for the tests of the record: one with SQLite built in, where the one at hand has none. */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cp, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { hasOwnSqlite } from './installPackages.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * @param {NodeJS.ProcessEnv} env  UNDERSIDE_OTHER_NODE names one
 * @returns {Promise<string | undefined>} its program; undefined when the Node at hand has SQLite built in already
 * @throws with a sentence when there is none to be had
 */
export async function findOtherNode(env) {
  if (env.UNDERSIDE_OTHER_NODE) return env.UNDERSIDE_OTHER_NODE;
  if (hasOwnSqlite()) return undefined;
  const place = join(root, '.cache', 'otherNode');
  const program = join(place, 'node_modules', `node-${process.platform}-${process.arch}`, 'bin', 'node');
  if (existsSync(program)) return program;
  console.log('Fetching a newer Node for the tests of the record (about 190 MB unpacked) …');
  await mkdir(place, { recursive: true });
  for (const name of ['package.json', 'package-lock.json'])
    await cp(join(root, 'test', 'otherNode', name), join(place, name));
  await fetchPackages(place);
  if (existsSync(program)) return program;
  throw new Error(
    'No newer Node could be fetched for the tests of the record: name a Node 24 in UNDERSIDE_OTHER_NODE.',
  );
}

/** The packages carry the program itself; the script that comes with them is not needed. */
function fetchPackages(cwd) {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  return new Promise((resolve) => {
    const child = spawn(npm, ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'], {
      cwd,
      stdio: 'inherit',
      shell: process.platform === 'win32',
    });
    child.once('error', resolve);
    child.once('close', resolve);
  });
}
