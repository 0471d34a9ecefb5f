import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { CannotOpen } from './fault.ts';
import { openSqlite } from './sqlite/openSqlite.ts';

/** Holds a data folder for one running program. */
export type FolderLock = {
  /** Writes down where this program answers, for the sentence a second copy prints. */
  sayAddress(address: string): void;
  release(): void;
};

/**
 * Takes a data folder for this process.
 *
 * The lock is the operating system's own, held on a small SQLite file: it ends with the process however the process
 * ends, so that none is ever left behind by a crash. The process number beside it is only for the sentence.
 *
 * @throws CannotOpen when another running program holds the folder
 */
export function lockFolder(dir: string): FolderLock {
  const holder = join(dir, 'running.json');
  const database = openSqlite(join(dir, 'running.lock'));
  try {
    database.pragma('journal_mode = MEMORY');
    database.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    database.close();
    if (!String((error as { code?: string }).code).startsWith('SQLITE_BUSY')) throw error;
    throw new CannotOpen('record.in-use', inUse(dir, readHolder(holder)));
  }
  writeFileSync(holder, JSON.stringify({ pid: process.pid }));
  return {
    sayAddress: (address) => writeFileSync(holder, JSON.stringify({ pid: process.pid, address })),
    release() {
      rmSync(holder, { force: true });
      database.close();
    },
  };
}

function inUse(dir: string, holder: { pid?: number; address?: string }): string {
  const where = holder.address ? ` at ${holder.address}` : '';
  const which = holder.pid ? ` (process ${holder.pid})` : '';
  return `Underside is already running on the folder ${dir}${where}${which}: use that one, close it first, or choose another folder with --data.`;
}

function readHolder(file: string): { pid?: number; address?: string } {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return {};
  }
}
