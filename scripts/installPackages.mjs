/** Installs the packages that package-lock.json names, when they are not all there. Plain Node, no package. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

/**
 * Why packages must be installed, in one sentence, or undefined when all is there.
 *
 * Compares what the lock names with what npm says it installed. Where Node has no SQLite of its own it also loads the
 * store's native module, which is built for one kind of Node; where Node has it, the module is not missed.
 */
export function whyInstall(root, { withTools, ownSqlite = hasOwnSqlite() }) {
  const wanted = readPackages(join(root, 'package-lock.json'));
  const there = readPackages(join(root, 'node_modules', '.package-lock.json'));
  if (wanted === undefined) return undefined;
  if (there === undefined) return 'Installing the packages the program needs …';
  for (const [path, one] of Object.entries(wanted)) {
    if (path === '' || one.optional || one.devOptional || one.peer || (one.dev && !withTools)) continue;
    if (there[path]?.version !== one.version) return 'Bringing the installed packages up to date …';
  }
  return ownSqlite || nativeModuleLoads(root)
    ? undefined
    : 'The store was built for another Node: installing it again …';
}

/**
 * Runs `npm ci`, showing what it says. Only the store's module has a script that this program needs, and only where Node
 * has no SQLite: elsewhere no script of any package runs, so that no compiler is looked for.
 *
 * @returns a sentence when it failed
 */
export async function installPackages(root, { withTools }) {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const kinds = withTools ? '--include=dev' : '--omit=dev';
  const code = await new Promise((resolve) => {
    const scripts = hasOwnSqlite() ? ['--ignore-scripts'] : [];
    const child = spawn(npm, ['ci', kinds, ...scripts, '--no-audit', '--no-fund', '--loglevel=http'], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32',
    });
    const show = countPackages();
    child.stdout.on('data', show);
    child.stderr.on('data', show);
    child.on('error', () => resolve(-1));
    child.on('close', (ended) => {
      if (ended !== 0) process.stderr.write(show.tail());
      resolve(ended);
    });
  });
  if (code === -1) return 'npm could not be started: install Node with npm (nodejs.org) and try again.';
  if (code !== 0)
    return 'The packages could not be installed: see the lines above; without a connection, try again with one.';
  return undefined;
}

/** Turns npm's lines into one running count, and keeps the last of them for the case of a failure. */
function countPackages() {
  let fetched = 0;
  let kept = '';
  const show = (chunk) => {
    const text = String(chunk);
    kept = (kept + text).slice(-3000);
    fetched += (text.match(/http fetch GET 200/g) ?? []).length;
    if (process.stdout.isTTY) process.stdout.write(`\r  ${fetched} packages fetched`);
    else if (fetched % 50 === 0 && text.includes('http fetch'))
      process.stdout.write(`  ${fetched} packages fetched\n`);
  };
  show.tail = () => `\n${kept}\n`;
  return show;
}

function readPackages(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages;
  } catch {
    return undefined;
  }
}

/** Whether this Node has SQLite built in (from 22.13 and 24 on): then nothing has to be compiled or fetched as built. */
export function hasOwnSqlite() {
  const { emitWarning } = process;
  // Asking for it is enough for Node to say at every start that it is an experiment.
  process.emitWarning = () => {};
  try {
    return process.getBuiltinModule?.('node:sqlite') !== undefined;
  } finally {
    process.emitWarning = emitWarning;
  }
}

function nativeModuleLoads(root) {
  try {
    const Database = createRequire(join(root, 'package.json'))('better-sqlite3');
    new Database(':memory:').close();
    return true;
  } catch {
    return false;
  }
}
