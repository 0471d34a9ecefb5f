import { randomUUID } from 'node:crypto';
import type { EventLog, HistoryPart } from './eventLog.ts';
import { CannotOpen } from './fault.ts';
import { type DeviceHead, recordHead } from './recordHead.ts';
import { openSqlite, type SqliteDatabase } from './sqlite/openSqlite.ts';
import { whenQuiet } from './whenQuiet.ts';

/** The version of the tables below, kept in the file's user_version. */
export const schemaVersion = 2;

/** After so long without an act the write-ahead file is brought into the record's own. */
const quietMs = 500;

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
    programVersion TEXT NOT NULL
  ) STRICT;
  CREATE TRIGGER record_is_one BEFORE INSERT ON record WHEN EXISTS (SELECT 1 FROM record)
    BEGIN SELECT RAISE(ABORT, 'a record has one id'); END;
  CREATE TRIGGER record_stays BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'the id of a record is never changed'); END;
  CREATE TRIGGER record_is_kept BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'the id of a record is never removed'); END;
`,
];

/**
 * The log as a SQLite file: write-ahead, every commit flushed to the disk before it is answered.
 *
 * @param file      the file, made when it is not there; ':memory:' for none
 * @param readOnly  true to look only: nothing is made, nothing is locked
 * @param programVersion  noted beside the id of a record that is new
 * @throws CannotOpen with one sentence when the file is of a newer program, is no record, or can't be written
 */
export function sqliteLog(file: string, readOnly = false, programVersion = ''): EventLog {
  const database = open(file, readOnly, programVersion);
  const insert = readOnly
    ? undefined
    : database.prepare('INSERT INTO events (id, piece, device, seq, hash, body) VALUES (?, ?, ?, ?, ?, ?)');
  const byPiece = database.prepare<Row>(
    'SELECT position, body FROM events WHERE piece = ? ORDER BY position',
  );
  const afterPlace = database.prepare<Row>(
    'SELECT position, body FROM events WHERE piece = ? AND position > ? ORDER BY position LIMIT ?',
  );
  const beforePlace = database.prepare<Row>(
    'SELECT position, body FROM events WHERE piece = ? AND position < ? ORDER BY position DESC LIMIT ?',
  );
  const countOf = database.prepare<{ count: number }>('SELECT count(*) AS count FROM events WHERE piece = ?');
  const rowsOf = (piece: string, part: HistoryPart | undefined): Row[] => {
    if (part === undefined) return byPiece.all(piece);
    if ('after' in part) return afterPlace.all(piece, part.after, part.most);
    return beforePlace.all(piece, part.before, part.most).toReversed();
  };
  const pieces = database.prepare<{ piece: string }>(
    'SELECT piece FROM events GROUP BY piece ORDER BY min(position)',
  );
  const byId = database.prepare<Row>('SELECT position, body FROM events WHERE id = ?');
  const byPlace = database.prepare<Row>('SELECT position, body FROM events WHERE device = ? AND seq = ?');
  const head = database.prepare<{ seq: number; hash: string }>(
    'SELECT seq, hash FROM events WHERE device = ? ORDER BY seq DESC LIMIT 1',
  );
  const heads = database.prepare<DeviceHead>(
    'SELECT device, max(seq) AS seq, hash FROM events GROUP BY device',
  );
  const count = database.prepare<{ n: number }>('SELECT count(*) AS n FROM events');
  // A copy of the one file, made by hand, then holds nearly all; passive: it waits for no reader and fails on none.
  const checkpoint = whenQuiet(quietMs, () => void database.pragma('wal_checkpoint(PASSIVE)'));
  return {
    recordId: idOf(database),
    append(events) {
      const first = database.inTransaction(() => {
        const places = events.map((one) =>
          insert?.run(one.id, one.piece, one.device, one.seq, one.hash, JSON.stringify(one)),
        );
        return Number(places[0]?.lastInsertRowid);
      });
      checkpoint.told();
      return first;
    },
    ofPiece: (piece, part) =>
      rowsOf(piece, part).map((row) => ({ position: row.position, event: JSON.parse(row.body) })),
    count: (piece) => countOf.get(piece)?.count ?? 0,
    pieces: () => pieces.all().map((row) => row.piece),
    find(id) {
      const row = byId.get(id);
      return row && JSON.parse(row.body);
    },
    head(device) {
      const row = head.get(device);
      return row && { seq: row.seq, hash: row.hash };
    },
    at(device, seq) {
      const row = byPlace.get(device, seq);
      return row && JSON.parse(row.body);
    },
    recordHead: () => recordHead(heads.all(), count.get()?.n ?? 0),
    close: () => {
      checkpoint.end();
      database.close();
    },
  };
}

type Row = { position: number; body: string };

/** A record of the first version has no id, and gets none from one who only looks. */
function idOf(database: SqliteDatabase): string {
  if (Number(database.pragma('user_version')) < 2) return '';
  return database.prepare<{ id: string }>('SELECT id FROM record').get()?.id ?? '';
}

function open(file: string, readOnly: boolean, programVersion: string): SqliteDatabase {
  let database: SqliteDatabase | undefined;
  try {
    database = openSqlite(file, { readOnly, waitMs: 2000 });
    const version = Number(database.pragma('user_version'));
    if (version > schemaVersion) throw newerStore(file, version);
    if (!readOnly) prepare(database, version, programVersion);
    return database;
  } catch (error) {
    database?.close();
    throw error instanceof CannotOpen ? error : openFault(file, error);
  }
}

function prepare(database: SqliteDatabase, version: number, programVersion: string): void {
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  if (version === schemaVersion) return;
  database.inTransaction(() => {
    for (const step of steps.slice(version)) database.exec(step);
    const about = database.prepare(
      'INSERT INTO record (only, id, createdAt, programVersion) VALUES (1, ?, ?, ?)',
    );
    if (version < 2) about.run(randomUUID(), new Date().toISOString(), programVersion);
    database.pragma(`user_version = ${schemaVersion}`);
  });
}

function newerStore(file: string, version: number): CannotOpen {
  return new CannotOpen(
    'record.newer-store',
    `The record ${file} was written by a newer Underside (version ${version} of the store, and this program knows ${schemaVersion}): start that newer program, or choose another folder with --data.`,
  );
}

function openFault(file: string, error: unknown): CannotOpen {
  const code = (error as { code?: string }).code ?? '';
  if (code === 'SQLITE_NOTADB' || code === 'SQLITE_CORRUPT') {
    return new CannotOpen(
      'record.not-a-record',
      `${file} is not a record of Underside, or is damaged: put back a copy of it, or choose another folder with --data.`,
    );
  }
  return new CannotOpen(
    'record.cannot-open',
    `The record ${file} cannot be opened (${(error as Error).message}): see that the folder can be written, or choose another with --data.`,
  );
}
