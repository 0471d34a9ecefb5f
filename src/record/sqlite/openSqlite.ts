import { existsSync } from 'node:fs';
import { type SqliteValue, sqliteDriver } from './driver.ts';
import { SqliteFault, tellingFaults } from './sqliteFault.ts';

/** A question put once and asked many times. */
export type Statement<Row> = {
  run(...values: SqliteValue[]): { changes: number; lastInsertRowid: number };
  get(...values: SqliteValue[]): Row | undefined;
  all(...values: SqliteValue[]): Row[];
};

/** An open SQLite database. All that it refuses is thrown as a SqliteFault. */
export type SqliteDatabase = {
  exec(sql: string): void;
  prepare<Row>(sql: string): Statement<Row>;
  /** The first value of what a pragma answers; nothing for one that sets something (`name = value`). */
  pragma(text: string): unknown;
  /** Does all of the work or none of it, with the right to write held from the beginning. */
  inTransaction<Value>(work: () => Value): Value;
  close(): void;
};

export type SqliteOptions = {
  /** To look only: nothing is made. */
  readOnly?: boolean;
  /** How long to wait for another program's lock. */
  waitMs?: number;
};

/**
 * Opens a SQLite file with whichever driver this Node has.
 *
 * @param file  made when it is not there, unless it is to be looked at only; ':memory:' for none
 * @throws SqliteFault when the file can't be opened, CannotOpen when there is no SQLite
 */
export function openSqlite(
  file: string,
  { readOnly = false, waitMs = 0 }: SqliteOptions = {},
): SqliteDatabase {
  if (readOnly && !existsSync(file)) throw new SqliteFault('SQLITE_CANTOPEN', 'there is no such file');
  const driver = sqliteDriver();
  const database = tellingFaults(() => driver.open(file, readOnly));
  const exec = (sql: string) => tellingFaults(() => void database.exec(sql));
  const prepare = <Row>(sql: string): Statement<Row> => {
    const statement = tellingFaults(() => database.prepare(sql));
    return {
      run(...values) {
        const { changes, lastInsertRowid } = tellingFaults(() => statement.run(...values));
        return { changes: Number(changes), lastInsertRowid: Number(lastInsertRowid) };
      },
      get: (...values) => tellingFaults(() => statement.get(...values)) as Row | undefined,
      all: (...values) => tellingFaults(() => statement.all(...values)) as Row[],
    };
  };
  const opened: SqliteDatabase = {
    exec,
    prepare,
    pragma: (text) =>
      text.includes('=')
        ? exec(`PRAGMA ${text}`)
        : Object.values(prepare<object>(`PRAGMA ${text}`).get() ?? {})[0],
    inTransaction(work) {
      exec('BEGIN IMMEDIATE');
      try {
        const value = work();
        exec('COMMIT');
        return value;
      } catch (error) {
        rollBack(exec);
        throw error;
      }
    },
    close: () => database.close(),
  };
  exec(`PRAGMA busy_timeout = ${waitMs}`);
  return opened;
}

/** A disk that is full may have ended the transaction already. */
function rollBack(exec: (sql: string) => void): void {
  try {
    exec('ROLLBACK');
  } catch (error) {
    if (!(error instanceof SqliteFault)) throw error;
  }
}
