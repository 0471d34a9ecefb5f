import {
  closeSync,
  copyFileSync,
  lstatSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readSync,
  rmSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { CannotOpen } from '../fault.ts';
import { recordFile } from '../openDataFolder.ts';

/** A record's file copied into a folder of its own, as it stood at one moment. */
export type RecordAside = { folder: string; file: string; remove: () => void };

const prefix = 'underside-look-';

/**
 * Copies the file of a record aside, to be read there. SQLite puts files beside a record that it only reads, and can't read one
 * at all on a disk that is write-protected; so whoever only looks, looks at a copy, and the folder is left as it is to the byte.
 *
 * May run while another program writes: every act committed before the call is in it. Not for a process that has the record
 * itself open, for on POSIX closing any handle of a file lets go of the locks that SQLite holds on it.
 *
 * @throws CannotOpen when it can't be read or copied
 * @source SQLite, “How To Corrupt An SQLite Database File”, 2.2 (locks), and “WAL-mode File Format”
 */
export function recordAside(dir: string): RecordAside {
  try {
    removeLeftBehind();
    const folder = mkdtempSync(join(tmpdir(), `${prefix}${process.pid}-`));
    const remove = () => rmSync(folder, { recursive: true, force: true });
    try {
      copyWhole(recordFile(dir), recordFile(folder));
      return { folder, file: recordFile(folder), remove };
    } catch (error) {
      remove();
      throw error;
    }
  } catch (error) {
    if (error instanceof CannotOpen) throw error;
    const { code, message } = error as NodeJS.ErrnoException;
    throw new CannotOpen(
      'record.cannot-look',
      code === 'ENOSPC' || code === 'EDQUOT'
        ? `The disk of ${tmpdir()} is full, where a record that is only looked at is copied to be read: free some space and try again.`
        : `The record ${recordFile(dir)} can’t be read (${message}): mend its permissions, or copy the folder elsewhere and open the copy.`,
    );
  }
}

/**
 * The file first, then what waits beside it to be brought in. A page that is brought in meanwhile is in the copy of the latter
 * too, and is read from there; only where that was begun anew in between could one be lost, and then the copy is made again.
 */
function copyWhole(from: string, to: string): void {
  for (let tries = 0; tries < 50; tries += 1) {
    const before = beginningOf(`${from}-wal`);
    copyFileSync(from, to);
    rmSync(`${to}-wal`, { force: true });
    if (before !== '') copyIfThere(`${from}-wal`, `${to}-wal`);
    if (beginningOf(`${from}-wal`) === before) return;
  }
  throw new CannotOpen(
    'record.cannot-look',
    `So much is being written to ${from} that it can’t be copied to be looked at: try again in a moment.`,
  );
}

function copyIfThere(from: string, to: string): void {
  try {
    copyFileSync(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
}

/** The header of a write-ahead file, which is another whenever the file is begun anew; empty where there is none. */
function beginningOf(file: string): string {
  try {
    const handle = openSync(file, 'r');
    const header = Buffer.alloc(32);
    try {
      return header.subarray(0, readSync(handle, header, 0, 32, 0)).toString('hex');
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return '';
    throw error;
  }
}

/** A program that was killed could not remove its copy: names of clients stand in it, so the next one does. */
function removeLeftBehind(): void {
  for (const name of readdirSync(tmpdir())) {
    const pid = Number(new RegExp(`^${prefix}(\\d+)-`).exec(basename(name))?.[1]);
    if (!(pid > 0) || isRunning(pid)) continue;
    const folder = join(tmpdir(), name);
    const there = lstatSync(folder, { throwIfNoEntry: false });
    if (there?.isDirectory() && (process.getuid === undefined || there.uid === process.getuid()))
      rmSync(folder, { recursive: true, force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH';
  }
}
