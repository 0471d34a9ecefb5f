import { accessSync, constants, existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { EventLog } from './eventLog.ts';
import { CannotOpen } from './fault.ts';
import { keepPrivate } from './keepPrivate.ts';
import { type FolderLock, lockFolder } from './lockFolder.ts';
import { sqliteLog } from './sqliteLog.ts';

/** The file of the record in a data folder. */
export const recordFile = (dir: string) => join(dir, 'record.db');

/**
 * Opens a data folder for this process alone, making it if it is not there.
 *
 * @param programVersion  noted beside the id of a record that is new
 * @throws CannotOpen with one plain sentence: not writable, in use, of a newer program, damaged
 */
export function openDataFolder(dir: string, programVersion = ''): { log: EventLog; lock: FolderLock } {
  makeWritable(dir);
  refuseLostRecord(dir);
  const lock = takeLock(dir);
  try {
    keepPrivate(dir);
    return { log: sqliteLog(recordFile(dir), { programVersion }), lock };
  } catch (error) {
    lock.release();
    throw error;
  }
}

/**
 * Photos or signed revisions without their record, or beside an empty file of its name: to begin anew beside them would look like an empty record.
 *
 * @throws CannotOpen
 */
export function refuseLostRecord(dir: string): void {
  const record = statSync(recordFile(dir), { throwIfNoEntry: false });
  if (record !== undefined && (!record.isFile() || record.size > 0)) return;
  const left = ['photos', 'issued'].filter((name) => holdsFiles(join(dir, name)));
  if (left.length === 0) return;
  throw new CannotOpen(
    'record.lost',
    `The folder ${dir} holds ${left.join(' and ')} but ${record === undefined ? 'no record.db, the file' : 'a record.db with nothing in it, which is the file'} with all entries: put it back from a back-up (npx underside restore), or choose another folder with --data. Nothing was changed.`,
  );
}

function holdsFiles(dir: string): boolean {
  if (!existsSync(dir)) return false;
  return readdirSync(dir, { withFileTypes: true }).some(
    (entry) => entry.isFile() || (entry.isDirectory() && holdsFiles(join(dir, entry.name))),
  );
}

function makeWritable(dir: string): void {
  try {
    makeFolder(resolve(dir));
    if (!statSync(dir).isDirectory()) throw new Error('not a folder');
    accessSync(dir, constants.R_OK | constants.W_OK | constants.X_OK);
    if (existsSync(recordFile(dir))) accessSync(recordFile(dir), constants.R_OK | constants.W_OK);
  } catch {
    throw notWritable(dir);
  }
}

/** Makes a folder and those it stands in, one by one: Node's own way of doing so never ends under /proc. */
function makeFolder(dir: string): void {
  if (existsSync(dir)) return;
  if (dirname(dir) !== dir) makeFolder(dirname(dir));
  mkdirSync(dir);
}

function takeLock(dir: string): FolderLock {
  try {
    return lockFolder(dir);
  } catch (error) {
    if (error instanceof CannotOpen) throw error;
    throw isFull(error) ? diskFull(dir) : notWritable(dir);
  }
}

/** Whether a disk or a user's share of it is full, as Node or SQLite says it. */
function isFull(error: unknown): boolean {
  return ['ENOSPC', 'EDQUOT', 'SQLITE_FULL'].includes((error as { code?: string }).code ?? '');
}

function diskFull(dir: string): CannotOpen {
  return new CannotOpen(
    'record.disk-full',
    `The disk of the folder ${dir} is full: free some space and start again. Nothing was changed.`,
  );
}

function notWritable(dir: string): CannotOpen {
  return new CannotOpen(
    'record.folder-not-writable',
    `The folder ${dir} cannot be written: choose another with --data, or mend its permissions.`,
  );
}
