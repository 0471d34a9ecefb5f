import type { Fault } from '../ground/fault.ts';
import { SqliteFault } from './sqlite/sqliteFault.ts';

/** What to tell a person where SQLite could not read or write the file of an open record; undefined for any other error. */
export function unreadableFile(error: unknown): Fault | undefined {
  if (!(error instanceof SqliteFault)) return undefined;
  if (error.code === 'SQLITE_FULL')
    return {
      code: 'record.disk-full',
      path: 'record.db',
      message: 'The disk is full, and nothing was written: free some space and try again.',
    };
  if (error.code === 'SQLITE_CORRUPT' || error.code === 'SQLITE_NOTADB')
    return {
      code: 'record.file-damaged',
      path: 'record.db',
      message:
        'The file of the record (record.db) is damaged, and this can’t be read from it. Run npx underside verify to see what is harmed, and bring the record back from a back-up with npx underside restore.',
    };
  return {
    code: 'record.could-not-read',
    path: 'record.db',
    message: `The record could not be read (${error.message}): see that its disk is there, and try again.`,
  };
}
