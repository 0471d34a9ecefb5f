import { accessSync, constants, existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { EventLog } from './eventLog.ts';
import { CannotOpen } from './fault.ts';
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
  const lock = takeLock(dir);
  try {
    return { log: sqliteLog(recordFile(dir), false, programVersion), lock };
  } catch (error) {
    lock.release();
    throw error;
  }
}

function makeWritable(dir: string): void {
  try {
    makeFolder(resolve(dir));
    if (!statSync(dir).isDirectory()) throw new Error('not a folder');
    accessSync(dir, constants.R_OK | constants.W_OK | constants.X_OK);
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
    throw error instanceof CannotOpen ? error : notWritable(dir);
  }
}

function notWritable(dir: string): CannotOpen {
  return new CannotOpen(
    'record.folder-not-writable',
    `The folder ${dir} cannot be written: choose another with --data, or mend its permissions.`,
  );
}
