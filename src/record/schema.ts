import { createHash, randomUUID } from 'node:crypto';
import { canonicalJson } from './canonicalJson.ts';
import { openSqlite, type SqliteDatabase } from './sqlite/openSqlite.ts';

/** The version of the tables below, kept in the file's user_version. */
export const schemaVersion = 2;

/** What each version added; a record of an earlier version takes the steps it has not taken, all or none. */
const steps = [
  `
  CREATE TABLE events (
    position INTEGER PRIMARY KEY AUTOINCREMENT,
    id       TEXT NOT NULL UNIQUE,
    piece    TEXT NOT NULL,
    device   TEXT NOT NULL,
    seq      INTEGER NOT NULL CHECK (seq > 0),
    hash     TEXT NOT NULL CHECK (length(hash) = 64),
    body     TEXT NOT NULL CHECK (json_valid(body)),
    UNIQUE (device, seq)
  ) STRICT;
  CREATE INDEX events_of_piece ON events (piece, position);
  CREATE TRIGGER events_are_new BEFORE INSERT ON events
    WHEN EXISTS (SELECT 1 FROM events WHERE position = NEW.position OR id = NEW.id OR (device = NEW.device AND seq = NEW.seq))
    BEGIN SELECT RAISE(ABORT, 'an event is never put in the place of another'); END;
  CREATE TRIGGER events_stay BEFORE UPDATE ON events BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
  CREATE TRIGGER events_are_kept BEFORE DELETE ON events BEGIN SELECT RAISE(ABORT, 'an event is never removed'); END;
`,
  `
  CREATE TABLE record (
    only           INTEGER PRIMARY KEY CHECK (only = 1),
    id             TEXT NOT NULL CHECK (length(id) = 36),
    createdAt      TEXT NOT NULL,
    programVersion TEXT NOT NULL,
    seal           TEXT NOT NULL CHECK (length(seal) = 64)
  ) STRICT;
  CREATE TRIGGER record_is_one BEFORE INSERT ON record WHEN EXISTS (SELECT 1 FROM record)
    BEGIN SELECT RAISE(ABORT, 'a record has one id'); END;
  CREATE TRIGGER record_stays BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'the id of a record is never changed'); END;
  CREATE TRIGGER record_is_kept BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'the id of a record is never removed'); END;
`,
];

/** Whose record it is: one row, made once. */
export type AboutRecord = { id: string; createdAt: string; programVersion: string };

/**
 * A sum over what a record says of itself, by which a byte changed by accident shows. It is no proof against a hand that
 * means to deceive: it has no secret in it.
 */
export function sealOf({ id, createdAt, programVersion }: AboutRecord): string {
  return createHash('sha256').update(canonicalJson({ id, createdAt, programVersion })).digest('hex');
}

/** Brings the tables up to the present version, all steps or none. */
export function upgradeSchema(database: SqliteDatabase, from: number, programVersion: string): void {
  database.inTransaction(() => {
    for (const step of steps.slice(from)) database.exec(step);
    if (from < 2) {
      const about = { id: randomUUID(), createdAt: new Date().toISOString(), programVersion };
      database
        .prepare('INSERT INTO record (only, id, createdAt, programVersion, seal) VALUES (1, ?, ?, ?, ?)')
        .run(about.id, about.createdAt, programVersion, sealOf(about));
    }
    database.pragma(`user_version = ${schemaVersion}`);
  });
}

/** Every table, index and trigger of a database, in words that can be compared. */
export function schemaOf(database: SqliteDatabase): Map<string, string> {
  const rows = database
    .prepare<{ type: string; name: string; tbl_name: string; sql: string | null }>(
      'SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name',
    )
    .all();
  return new Map(
    rows.map((row) => [`${row.type} ${row.name}`, `${row.tbl_name}: ${row.sql ?? 'made by SQLite'}`]),
  );
}

/** What `schemaOf` gives for a sound record of a version. */
export function soundSchema(version: number): Map<string, string> {
  const database = openSqlite(':memory:');
  try {
    for (const step of steps.slice(0, version)) database.exec(step);
    return schemaOf(database);
  } finally {
    database.close();
  }
}
