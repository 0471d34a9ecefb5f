import { existsSync } from 'node:fs';
import type { EventLog } from '../eventLog.ts';
import { CannotOpen } from '../fault.ts';
import { recordFile, refuseLostRecord } from '../openDataFolder.ts';
import { schemaVersion } from '../schema.ts';
import { openSqlite } from '../sqlite/openSqlite.ts';
import { sqliteLog } from '../sqliteLog.ts';
import { ofNewerProgram, type ReadOnly } from './readOnly.ts';
import { recordAside } from './recordAside.ts';

/** A record that is looked at: `file` is a copy of it, in a folder that goes when it is closed. */
export type LookedAt = {
  log: EventLog;
  file: string;
  workDir: string;
  readOnly: ReadOnly;
  close: () => void;
};

/**
 * Opens a data folder to look at it only. Nothing in it is changed, made, locked or given other rights.
 *
 * @param evenNewer  also a record that a newer program wrote, as far as this one can read it
 * @throws CannotOpen with one plain sentence: no record there, unreadable, damaged, newer
 */
export function lookAtFolder(dir: string, why: ReadOnly, evenNewer = false): LookedAt {
  refuseLostRecord(dir);
  if (!existsSync(recordFile(dir)))
    throw new CannotOpen(
      'record.nothing-to-look-at',
      `There is no record in ${dir} to look at: name the folder that holds record.db with --data. One of back-ups is first brought back with npx underside restore.`,
    );
  const { folder, file, remove } = recordAside(dir);
  try {
    const log = sqliteLog(file, { readOnly: true, evenNewer });
    const readOnly = isNewer(file) ? ofNewerProgram(why) : why;
    const close = () => {
      log.close();
      remove();
    };
    return { log, file, workDir: folder, readOnly, close };
  } catch (error) {
    remove();
    throw error;
  }
}

function isNewer(file: string): boolean {
  const database = openSqlite(file, { readOnly: true });
  try {
    return Number(database.pragma('user_version')) > schemaVersion;
  } finally {
    database.close();
  }
}
