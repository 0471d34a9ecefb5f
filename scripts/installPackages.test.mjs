import { cp, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { whyInstall } from './installPackages.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const lock = (version) =>
  JSON.stringify({
    packages: { '': {}, 'node_modules/a': { version }, 'node_modules/t': { version: '1.0.0', dev: true } },
  });

/** A checkout with a lock, and with what npm says it installed; the store's module is ours, or one that does not load. */
async function checkout({ wanted, installed, moduleLoads = true }) {
  const dir = await mkdtemp(join(tmpdir(), 'underside-'));
  onTestFinished(() => rm(dir, { recursive: true }));
  await writeFile(join(dir, 'package.json'), '{}');
  await writeFile(join(dir, 'package-lock.json'), lock(wanted));
  if (installed === undefined) return dir;
  await mkdir(join(dir, 'node_modules'));
  await writeFile(join(dir, 'node_modules/.package-lock.json'), installed);
  const store = join(dir, 'node_modules/better-sqlite3');
  if (moduleLoads) await symlink(join(root, 'node_modules/better-sqlite3'), store, 'junction');
  else {
    await mkdir(store);
    await writeFile(
      join(store, 'index.js'),
      "throw new Error('compiled against a different Node.js version');",
    );
  }
  return dir;
}

describe('whether packages must be installed', () => {
  it('not when all are there', async () => {
    const dir = await checkout({ wanted: '1.0.0', installed: lock('1.0.0') });
    expect(whyInstall(dir, { withTools: true })).toBeUndefined();
  });

  it('when there are none', async () => {
    expect(whyInstall(await checkout({ wanted: '1.0.0' }), { withTools: false })).toContain('Installing');
  });

  it('when one is of another version than the lock names', async () => {
    const dir = await checkout({ wanted: '1.0.1', installed: lock('1.0.0') });
    expect(whyInstall(dir, { withTools: false })).toContain('up to date');
  });

  it('for the tests, when the tools are missing; not for a start', async () => {
    const dir = await checkout({
      wanted: '1.0.0',
      installed: JSON.stringify({ packages: { 'node_modules/a': { version: '1.0.0' } } }),
    });
    expect(whyInstall(dir, { withTools: true })).toContain('up to date');
    expect(whyInstall(dir, { withTools: false })).toBeUndefined();
  });

  it('when the store was built for another Node', async () => {
    const dir = await checkout({ wanted: '1.0.0', installed: lock('1.0.0'), moduleLoads: false });
    expect(whyInstall(dir, { withTools: false, ownSqlite: false })).toContain('built for another Node');
  });

  it('not for the sake of the store where Node has SQLite built in', async () => {
    const dir = await checkout({ wanted: '1.0.0', installed: lock('1.0.0'), moduleLoads: false });
    expect(whyInstall(dir, { withTools: false, ownSqlite: true })).toBeUndefined();
  });

  it('not in this checkout, since its tests run', async () => {
    const dir = await mkdtemp(join(tmpdir(), 'underside-'));
    onTestFinished(() => rm(dir, { recursive: true }));
    for (const name of ['package.json', 'package-lock.json']) await cp(join(root, name), join(dir, name));
    await symlink(join(root, 'node_modules'), join(dir, 'node_modules'), 'junction');
    expect(whyInstall(dir, { withTools: true })).toBeUndefined();
  });
});
