import { chmodSync, existsSync, lstatSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { isMainThread } from 'node:worker_threads';

/** What this program keeps in a data folder: a folder that holds anything else is somebody's, and is left as it is. */
const ours =
  /^(record\.db.*|running\..*|settings\.json.*|access|photos|own-knowledge|issued|derived|incoming)$/;

/**
 * Keeps a data folder to its owner: names and addresses of clients stand in it. Folders become 0700 and files 0600,
 * those of an earlier program too, and whatever this program writes from now on. On Windows the folder of a user is
 * theirs alone already.
 */
export function keepPrivate(dir: string): void {
  if (process.platform === 'win32') return;
  if (isMainThread) process.umask(0o077);
  const names = readdirSync(dir);
  for (const name of names.filter((one) => ours.test(one))) mend(join(dir, name));
  if (names.every((one) => ours.test(one))) setMode(dir);
}

function mend(path: string): void {
  setMode(path);
  if (existsSync(path) && lstatSync(path).isDirectory())
    for (const name of readdirSync(path)) mend(join(path, name));
}

/** Another user's files, and what a link leads to, are not ours to change. */
function setMode(path: string): void {
  const there = lstatSync(path);
  if (!(there.isDirectory() || there.isFile()) || there.uid !== process.getuid?.()) return;
  const wanted = there.isDirectory() ? 0o700 : 0o600;
  if ((there.mode & 0o777) !== wanted) chmodSync(path, wanted);
}
