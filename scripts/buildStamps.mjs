/** What each part of dist/ was last made from, and the lock that keeps two builds apart. Plain Node, no package. */
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** One hash over the names and bytes of all files under the given files and folders; tests are left out. */
export async function inputsHash(root, places) {
  // Not which Node: what is made is the same whichever makes it.
  const hash = createHash('sha256');
  for (const place of places)
    for (const file of await filesUnder(root, place))
      hash
        .update(file)
        .update('\0')
        .update(await readFile(join(root, file)));
  return hash.digest('hex');
}

async function filesUnder(root, place) {
  const full = join(root, place);
  if (!existsSync(full)) return [];
  if ((await stat(full)).isFile()) return [place];
  const names = (await readdir(full))
    .sort()
    .filter((name) => !/\.test\.tsx?$/.test(name) && !name.startsWith('.'));
  return (await Promise.all(names.map((name) => filesUnder(root, `${place}/${name}`)))).flat();
}

export async function readStamps(dist) {
  try {
    return JSON.parse(await readFile(join(dist, 'stamps.json'), 'utf8'));
  } catch {
    return {};
  }
}

export async function writeStamps(dist, stamps) {
  await mkdir(dist, { recursive: true });
  await writeFile(join(dist, 'stamps.json'), `${JSON.stringify(stamps, null, 2)}\n`);
}

/** A look at the stamps holds the lock for a moment; only a real build is worth a word. */
const worthAWordMs = 2000;

/** Runs `work` while no other build runs in this checkout; a lock left by a dead process is taken over. */
export async function withBuildLock(root, say, work) {
  const lock = join(root, '.cache', 'build.lock');
  await mkdir(join(root, '.cache'), { recursive: true });
  const began = Date.now();
  for (let told = false; ; ) {
    try {
      await writeFile(lock, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
      if (!(await isHeld(lock))) await rm(lock, { force: true });
      else if (!told && Date.now() - began > worthAWordMs) {
        told = true;
        say('Waiting for another build of this folder to end …');
      }
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
  try {
    return await work();
  } finally {
    await rm(lock, { force: true });
  }
}

async function isHeld(lock) {
  try {
    const pid = Number(await readFile(lock, 'utf8'));
    if (!Number.isInteger(pid) || pid <= 0) return Date.now() - (await stat(lock)).mtimeMs < 2000;
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}
