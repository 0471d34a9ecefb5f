import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
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
  const holder = holderFile(dir);
  const database = openSqlite(join(dir, 'running.lock'));
  try {
    database.pragma('journal_mode = MEMORY');
    database.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    database.close();
    if (!String((error as { code?: string }).code).startsWith('SQLITE_BUSY')) throw error;
    throw new CannotOpen('record.in-use', inUse(dir, holderOf(dir)));
  }
  const us: Holder = { pid: process.pid, host: hostname() };
  writeFileSync(holder, JSON.stringify(us));
  return {
    sayAddress: (address) => writeFileSync(holder, JSON.stringify({ ...us, address })),
    release() {
      rmSync(holder, { force: true });
      database.close();
    },
  };
}

/** What a program that holds a folder says of itself. */
export type Holder = { pid?: number; host?: string; address?: string };

/** Who holds, or last held, a folder; nothing where none says so. */
export function holderOf(dir: string): Holder {
  try {
    return JSON.parse(readFileSync(holderFile(dir), 'utf8'));
  } catch {
    return {};
  }
}

const holderFile = (dir: string) => join(dir, 'running.json');

function inUse(dir: string, { pid, host, address }: Holder): string {
  const elsewhere = host !== undefined && host !== hostname();
  const where = elsewhere ? ` on the computer “${host}”` : address ? ` at ${address}` : '';
  const which = pid && !elsewhere ? ` (process ${pid})` : '';
  return `Underside is already running on the folder ${dir}${where}${which}: use that one, close it first, or choose another folder with --data.`;
}
