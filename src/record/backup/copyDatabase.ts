import { openSqlite } from '../sqlite/openSqlite.ts';
import { syncFile } from './durableFiles.ts';

/**
 * Copies the database of a record as it stands at this moment, whole and by itself, while the program may go on
 * writing to it: a reader of its own, which sees every act committed before it began.
 *
 * @source SQLite, “VACUUM … INTO”: the copy is consistent also where other connections write meanwhile
 */
export async function copyDatabase(from: string, to: string): Promise<void> {
  const database = openSqlite(from, { readOnly: true, waitMs: 10_000 });
  try {
    database.prepare('VACUUM INTO ?').run(to);
  } finally {
    database.close();
  }
  await syncFile(to);
}
