import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** A revision's files by name, as bytes. */
export type RevisionFiles = ReadonlyMap<string, Uint8Array>;

/** Where signed revisions stand in a data folder: `issued/PIECE/REVISION/`. */
export function issuedPaths(dir: string) {
  const issued = join(dir, 'issued');
  return {
    issued,
    piece: (piece: string) => join(issued, piece),
    revision: (piece: string, revision: number) => join(issued, piece, String(revision)),
    /** What is being written: never a revision yet. */
    writing: join(issued, '.writing'),
    /** Whole revisions whose signing never came to the record. */
    setAside: join(issued, '.set-aside'),
  };
}

/**
 * Writes a revision's files whole, flushes them to the disk and puts them in their place at once. What a crash leaves is
 * either nothing in that place or all of it.
 *
 * A revision that stands there without an act of the record is set aside first, never overwritten: its signing was cut off.
 */
export async function writeRevision(
  dir: string,
  piece: string,
  revision: number,
  files: RevisionFiles,
): Promise<void> {
  const paths = issuedPaths(dir);
  const place = paths.revision(piece, revision);
  const waiting = join(paths.writing, randomUUID());
  await makePrivate(waiting);
  await makePrivate(paths.piece(piece));
  for (const [name, bytes] of files) {
    const file = await open(join(waiting, name), 'wx', 0o600);
    await file.writeFile(bytes).finally(() => file.sync().finally(() => file.close()));
  }
  await flushFolder(waiting);
  if (await isThere(place)) await setAside(dir, piece, revision);
  await rename(waiting, place);
  for (const each of [paths.piece(piece), paths.issued, dir]) await flushFolder(each);
}

/** Moves a revision that was never signed out of the way, where it can still be read. */
export async function setAside(dir: string, piece: string, revision: number): Promise<void> {
  const paths = issuedPaths(dir);
  await makePrivate(paths.setAside);
  await rename(
    paths.revision(piece, revision),
    join(paths.setAside, `${piece}.${revision}.${randomUUID().slice(0, 8)}`),
  );
  await flushFolder(paths.setAside);
}

/** Clears what a crash left half-written. Nothing in it was ever signed. */
export async function clearWriting(dir: string): Promise<void> {
  await rm(issuedPaths(dir).writing, { recursive: true, force: true });
}

/** One file of a revision, or undefined where it is not there. */
export function readRevisionFile(
  dir: string,
  piece: string,
  revision: number,
  name: string,
): Promise<Buffer | undefined> {
  return readFile(join(issuedPaths(dir).revision(piece, revision), name)).catch(() => undefined);
}

/** Every revision that has a folder, and the names of what is in it. */
export async function foldersOfRevisions(
  dir: string,
): Promise<{ piece: string; revision: string; names: string[] }[]> {
  const { issued, piece: folderOf } = issuedPaths(dir);
  const found: { piece: string; revision: string; names: string[] }[] = [];
  for (const piece of await namesIn(issued))
    if (!piece.startsWith('.'))
      for (const revision of await namesIn(folderOf(piece)))
        found.push({ piece, revision, names: await namesIn(join(folderOf(piece), revision)) });
  return found;
}

/** SHA-256 in hex. */
export function sha256Of(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

async function namesIn(folder: string): Promise<string[]> {
  return (await readdir(folder).catch(() => [])).sort();
}

async function makePrivate(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
}

async function flushFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  await handle.sync().finally(() => handle.close());
}

async function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
