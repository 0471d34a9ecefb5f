import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, resolve, sep } from 'node:path';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import { writeDurably } from './durableFiles.ts';
import { type BackupManifest, readManifest } from './manifest.ts';

/** Says that a folder is one of back-ups, and of which record. */
const markName = 'underside-backups.json';

/** Where things stand in a folder of back-ups. */
export const backupPaths = {
  /** A file under its SHA-256, once, whichever dated copies it is part of: the same layout as `photos/` of a data folder. */
  stored: (folder: string, sha256: string) => join(folder, 'files', sha256.slice(0, 2), sha256),
  dated: (folder: string, name: string) => join(folder, name),
};

const datedName = /^\d{4}-\d{2}-\d{2} \d{2}\.\d{2}\.\d{2}( \(\d+\))?$/;

/** One dated copy; `manifest` is undefined where it can't be read. */
export type DatedCopy = { name: string; path: string; manifest: BackupManifest | undefined };

/** The dated copies in a folder of back-ups, the newest first. */
export async function datedCopies(folder: string): Promise<DatedCopy[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const names = entries.filter((one) => one.isDirectory() && datedName.test(one.name)).map((one) => one.name);
  const copies = names.map(async (name) => {
    const path = backupPaths.dated(folder, name);
    return { name, path, manifest: await readManifest(path) };
  });
  const time = (copy: DatedCopy) => Date.parse(copy.manifest?.madeAt ?? '') || 0;
  return (await Promise.all(copies)).sort((a, b) => time(b) - time(a) || (a.name < b.name ? 1 : -1));
}

/**
 * The folder that back-ups go into when the user names `chosen`: itself where it is empty or holds back-ups already, a
 * folder of our own within it where it holds other things.
 */
export async function folderFor(chosen: string, dataDir: string): Promise<Outcome<string>> {
  const at = resolve(chosen);
  if (isWithin(at, resolve(dataDir)))
    return refuse(
      'backup.inside-record',
      `${at} lies within the data folder, and would be lost together with it: choose a folder elsewhere, best on another disk.`,
      'folder',
    );
  try {
    if (!existsSync(at) || existsSync(join(at, markName))) return done(at);
    return done((await readdir(at)).length === 0 ? at : join(at, 'underside-backups'));
  } catch (error) {
    return refuse(
      'backup.folder-unreadable',
      `The folder ${at} can’t be used (${(error as Error).message}): choose another.`,
      'folder',
    );
  }
}

/** Marks a folder as holding the back-ups of one record; refuses one that holds those of another. */
export async function markFolder(folder: string, recordId: string): Promise<Outcome<undefined>> {
  const mark = join(folder, markName);
  const there = await readFile(mark, 'utf8').catch(() => undefined);
  // A record of the first version had no id until a newer program opened it.
  const marked = there === undefined ? undefined : readMark(there);
  if (marked !== undefined && marked !== '' && marked !== recordId)
    return refuse(
      'backup.other-record',
      `${folder} holds the back-ups of another record: choose a folder of its own for this one.`,
      'folder',
    );
  if (marked !== recordId) {
    await writeDurably(mark, `${JSON.stringify({ kind: 'underside-backups', recordId })}\n`);
    await writeDurably(join(folder, 'READ ME.txt'), readMe);
  }
  return done(undefined);
}

function readMark(text: string): string | undefined {
  try {
    return JSON.parse(text).recordId;
  } catch {
    return undefined;
  }
}

function isWithin(inner: string, outer: string): boolean {
  const way = relative(outer, inner);
  return way === '' || !(way === '..' || way.startsWith(`..${sep}`) || resolve(way) === way);
}

const readMe = `Back-ups of a record of Underside.

Each folder with a date holds one copy: the database, and a list of every file that belongs to it with
its SHA-256. The files themselves (photos and all else) lie in "files", once, under their SHA-256.

To restore, with Underside at hand:

    npx underside restore "THIS FOLDER" "A NEW FOLDER"

takes the newest copy that is whole. Name a folder with a date to take that one.

By hand: copy record.db of a dated folder into a new folder, and "files" into it under the name "photos".
That brings back the acts and the photos. manifest.json says under which path every other file belongs.

Keep this folder as it is. A dated folder may be removed; never remove anything from "files".
`;
