import type { EventLog, HistoryPart } from './eventLog.ts';
import { CannotOpen } from './fault.ts';
import { type DeviceHead, recordHead } from './recordHead.ts';
import { schemaVersion, upgradeSchema } from './schema.ts';
import { openSqlite, type SqliteDatabase } from './sqlite/openSqlite.ts';
import { SqliteFault } from './sqlite/sqliteFault.ts';
import { whenQuiet } from './whenQuiet.ts';

/** After so long without an act the write-ahead file is brought into the record's own. */
const quietMs = 500;

export type SqliteLogOptions = {
  /** To look only: nothing is made, nothing is locked. */
  readOnly?: boolean;
  /** To look at a record of a newer program too, as far as its acts stand where this program expects them. */
  evenNewer?: boolean;
  /** Noted beside the id of a record that is new. */
  programVersion?: string;
};

/**
 * The log as a SQLite file: write-ahead, every commit flushed to the disk before it is answered.
 *
 * @param file      the file, made when it is not there; ':memory:' for none
 * @throws CannotOpen with one sentence when the file is of a newer program, is no record, or can't be written
 */
export function sqliteLog(file: string, options: SqliteLogOptions = {}): EventLog {
  const database = open(file, options);
  try {
    return logOf(database, options.readOnly === true);
  } catch (error) {
    const version = Number(database.pragma('user_version'));
    database.close();
    throw version > schemaVersion ? newerStore(file, version, false) : openFault(file, error);
  }
}

function logOf(database: SqliteDatabase, readOnly: boolean): EventLog {
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
  const checkpoint = whenQuiet(quietMs, () => bringIn(database));
  return {
    recordId: idOf(database),
    append(events) {
      const first = database.inTransaction(() => {
        const places = events.map((one) => {
          const { id, piece, device, seq, hash } = one;
          const put = insert?.run(id, piece, device, seq, hash, JSON.stringify(one));
          if (put?.changes !== 1) throw new Error(`the act ${id} was not taken in`);
          return put.lastInsertRowid;
        });
        return Number(places[0]);
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

/** What can't be brought in now (the disk is full, say) is safe where it is, and is brought in later. */
function bringIn(database: SqliteDatabase): void {
  try {
    database.pragma('wal_checkpoint(PASSIVE)');
  } catch (error) {
    if (!(error instanceof SqliteFault)) throw error;
  }
}

type Row = { position: number; body: string };

/** A record of the first version has no id, and gets none from one who only looks. */
function idOf(database: SqliteDatabase): string {
  if (Number(database.pragma('user_version')) < 2) return '';
  return database.prepare<{ id: string }>('SELECT id FROM record').get()?.id ?? '';
}

function open(
  file: string,
  { readOnly = false, evenNewer = false, programVersion = '' }: SqliteLogOptions,
): SqliteDatabase {
  let database: SqliteDatabase | undefined;
  try {
    database = openSqlite(file, { readOnly, waitMs: 2000 });
    const version = Number(database.pragma('user_version'));
    if (version > schemaVersion && !(readOnly && evenNewer)) throw newerStore(file, version, true);
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
  if (version === 0 && database.prepare('SELECT 1 FROM sqlite_schema').get() !== undefined)
    throw new SqliteFault('SQLITE_NOTADB', 'it is a database of another program');
  upgradeSchema(database, version, programVersion);
}

function newerStore(file: string, version: number, mayLook: boolean): CannotOpen {
  const instead = mayLook
    ? 'start that newer program, choose another folder with --data, or look at this one with --read-only'
    : 'this one can’t read it: start that newer program';
  return new CannotOpen(
    'record.newer-store',
    `The record ${file} was written by a newer Underside (version ${version} of the store, and this program knows ${schemaVersion}): ${instead}.`,
  );
}

function openFault(file: string, error: unknown): CannotOpen {
  const code = (error as { code?: string }).code ?? '';
  if (code === 'SQLITE_FULL')
    return new CannotOpen(
      'record.disk-full',
      `The disk of ${file} is full: free some space and start again. Nothing that was kept is harmed.`,
    );
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
