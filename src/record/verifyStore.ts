import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { draftEvent, eventOrigin, type RecordedEvent } from '../piece/event.ts';
import { type AboutRecord, schemaOf, schemaVersion, sealOf, soundSchema } from './schema.ts';
import type { SqliteDatabase } from './sqlite/openSqlite.ts';

/** What stands in the file of a record: the acts that can be read, in order, and all that is amiss with the file. */
export type StoreContents = {
  recordId: string;
  acts: { position: number; event: RecordedEvent }[];
  faults: Fault[];
};

const hash = z.string().regex(/^[0-9a-f]{64}$/);
const recordedEvent = draftEvent.extend({
  seq: z.number().int().min(1),
  before: hash,
  hash,
  origin: eventOrigin.optional(),
});

/**
 * Reads all of a record's file and holds it against what the program writes: SQLite's own check, tables, indexes and
 * triggers, the record's id, the order of the acts, and every column of an act against its text.
 *
 * @throws SqliteFault where the file can't be read to its end
 */
export function readStore(database: SqliteDatabase): StoreContents {
  const version = Number(database.pragma('user_version'));
  if (version > schemaVersion || version < 1)
    return {
      recordId: '',
      acts: [],
      faults: [
        {
          code: version > schemaVersion ? 'record.newer-store' : 'record.not-a-record',
          path: 'record.db',
          message:
            version > schemaVersion
              ? `The record was written by a newer Underside (version ${version} of the store, and this program knows ${schemaVersion}): check it with that program.`
              : 'The file is not a record of Underside, or is damaged: put back a copy of it.',
        },
      ],
    };
  const faults = [...integrityFaults(database), ...schemaFaults(database, version)];
  const about = version < 2 ? undefined : aboutRecord(database);
  if (version >= 2 && about === undefined)
    faults.push({
      code: 'verify.record-id',
      path: 'record',
      message: 'What the record says of itself (its id, and when it was begun) is not as it was written.',
    });
  const acts = readActs(database, faults);
  return { recordId: about?.id ?? '', acts, faults };
}

/** @source SQLite, “PRAGMA integrity_check”: one line “ok”, or a line for each thing that is amiss */
function integrityFaults(database: SqliteDatabase): Fault[] {
  const lines = database.prepare<{ integrity_check: string }>('PRAGMA integrity_check(20)').all();
  return lines
    .map((line) => line.integrity_check)
    .filter((line) => line !== 'ok')
    .map((line) => ({
      code: 'verify.file-damaged',
      path: 'record.db',
      message: `The file of the record is damaged (${line}).`,
    }));
}

function schemaFaults(database: SqliteDatabase, version: number): Fault[] {
  const [there, sound] = [schemaOf(database), soundSchema(version)];
  const names = [...new Set([...sound.keys(), ...there.keys()])].filter(
    (name) => there.get(name) !== sound.get(name),
  );
  return names.map((name) => ({
    code: 'verify.schema',
    path: name,
    message: `The ${name} of the record is ${there.has(name) ? (sound.has(name) ? 'not as this program makes it' : 'not one that this program makes') : 'not there'}.`,
  }));
}

function aboutRecord(database: SqliteDatabase): AboutRecord | undefined {
  const rows = database.prepare<AboutRecord & { only: number; seal: string }>('SELECT * FROM record').all();
  const [about] = rows;
  return about !== undefined && rows.length === 1 && about.only === 1 && sealOf(about) === about.seal
    ? about
    : undefined;
}

type Row = { [Column in 'position' | 'id' | 'piece' | 'device' | 'seq' | 'hash' | 'body']: unknown };

function readActs(database: SqliteDatabase, faults: Fault[]): StoreContents['acts'] {
  const rows = database
    .prepare<Row>('SELECT position, id, piece, device, seq, hash, body FROM events ORDER BY position')
    .all();
  const last = database
    .prepare<{ seq: unknown }>("SELECT seq FROM sqlite_sequence WHERE name = 'events'")
    .all()
    .map((row) => row.seq);
  if (last.length > 1 || (last[0] ?? 0) !== rows.length)
    faults.push({
      code: 'verify.places',
      path: 'record.db',
      message: `The record holds ${rows.length} acts, and its counter says ${String(last[0] ?? 0)}: acts were cut off, or the counter was changed.`,
    });
  return rows.flatMap((row, index) => {
    const path = `event ${String(row.position)} (${String(row.id)})`;
    if (row.position !== index + 1)
      faults.push({
        code: 'verify.places',
        path,
        message: `This act stands at place ${String(row.position)} and should stand at ${index + 1}: acts were taken out, or moved.`,
      });
    const event = readAct(row);
    if (event === undefined) {
      faults.push({
        code: 'verify.act-unreadable',
        path,
        message: 'This act is not as it was recorded: it cannot be read.',
      });
      return [];
    }
    const columns = (['id', 'piece', 'device', 'seq', 'hash'] as const).filter(
      (column) => row[column] !== event[column],
    );
    if (columns.length > 0)
      faults.push({
        code: 'verify.columns-differ',
        path,
        message: `This act is kept under another ${columns.join(', ')} than it says itself.`,
      });
    return [{ position: index + 1, event }];
  });
}

/** An act is kept as JSON.stringify writes it: text that comes to the same in another spelling was put there by others. */
function readAct({ body }: Row): RecordedEvent | undefined {
  try {
    const value = JSON.parse(String(body));
    if (JSON.stringify(value) !== body || !recordedEvent.safeParse(value).success) return undefined;
    return value as RecordedEvent;
  } catch {
    return undefined;
  }
}
