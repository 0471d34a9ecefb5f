import { describe, expect, it, onTestFinished } from 'vitest';
import { finding, opening } from '../../test/kits/drafts.ts';
import type { RecordedEvent } from '../piece/event.ts';
import { chainStart, linkEvent } from './chain.ts';
import { sealOf, upgradeSchema } from './schema.ts';
import { openSqlite, type SqliteDatabase } from './sqlite/openSqlite.ts';
import { readStore } from './verifyStore.ts';

const first = linkEvent(opening('one'), chainStart);
const second = linkEvent(finding('one', 'a', 'splat'), first);
const third = linkEvent(finding('one', 'b', 'splat'), second);
const acts = [first, second, third];

function put(database: SqliteDatabase, event: RecordedEvent, body = JSON.stringify(event)): void {
  const { id, piece, device, seq, hash } = event;
  database
    .prepare('INSERT INTO events (id, piece, device, seq, hash, body) VALUES (?, ?, ?, ?, ?, ?)')
    .run(id, piece, device, seq, hash, body);
}

/** A record in memory with three acts, sound but for what is done to it; its triggers stand aside meanwhile. */
function record(...statements: string[]): SqliteDatabase {
  const database = openSqlite(':memory:');
  onTestFinished(() => database.close());
  upgradeSchema(database, 0, '0.0.0-test');
  for (const event of acts) put(database, event);
  changed(database, ...statements);
  return database;
}

function changed(database: SqliteDatabase, ...statements: string[]): void {
  const triggers = database
    .prepare<{ name: string; sql: string }>("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
    .all();
  for (const { name } of triggers) database.exec(`DROP TRIGGER ${name}`);
  for (const one of statements) database.exec(one);
  for (const { sql } of triggers) database.exec(sql);
}

const faultsOf = (...statements: string[]) => readStore(record(...statements)).faults;
const place = (position: number, { id } = acts[position - 1] as RecordedEvent) => `event ${position} (${id})`;

describe('the file of a record', () => {
  it('gives its acts in order, and its id', () => {
    const database = record();
    const { id } = database.prepare<{ id: string }>('SELECT id FROM record').get() as { id: string };
    expect(readStore(database)).toEqual({
      recordId: id,
      acts: acts.map((event, index) => ({ position: index + 1, event })),
      faults: [],
    });
  });

  it('of a newer program, or of none, is not read', () => {
    const newer = record('PRAGMA user_version = 3');
    expect(readStore(newer)).toEqual({
      recordId: '',
      acts: [],
      faults: [
        {
          code: 'record.newer-store',
          path: 'record.db',
          message:
            'The record was written by a newer Underside (version 3 of the store, and this program knows 2): check it with that program.',
        },
      ],
    });
    expect(readStore(record('PRAGMA user_version = 0'))).toEqual({
      recordId: '',
      acts: [],
      faults: [
        {
          code: 'record.not-a-record',
          path: 'record.db',
          message: 'The file is not a record of Underside, or is damaged: put back a copy of it.',
        },
      ],
    });
  });

  it('of the first version has no id, and is sound without', () => {
    const database = record();
    database.exec('DROP TABLE record; PRAGMA user_version = 1');
    expect(readStore(database)).toMatchObject({ recordId: '', faults: [] });
    expect(readStore(database).acts).toHaveLength(3);
  });

  it('says what SQLite finds amiss', () => {
    const lines = faultsOf(
      'PRAGMA ignore_check_constraints = ON',
      'UPDATE events SET seq = 0 WHERE position = 3',
      'PRAGMA ignore_check_constraints = OFF',
    );
    expect(lines).toContainEqual({
      code: 'verify.file-damaged',
      path: 'record.db',
      message: 'The file of the record is damaged (CHECK constraint failed in events).',
    });
  });

  it.each([
    ['DROP INDEX events_of_piece', 'index events_of_piece', 'not there'],
    ['CREATE TABLE notes (text TEXT)', 'table notes', 'not one that this program makes'],
    [
      'DROP INDEX events_of_piece; CREATE INDEX events_of_piece ON events (piece)',
      'index events_of_piece',
      'not as this program makes it',
    ],
  ])('says of its tables what is otherwise: %s', (statement, name, how) => {
    expect(faultsOf(statement)).toEqual([
      { code: 'verify.schema', path: name, message: `The ${name} of the record is ${how}.` },
    ]);
  });

  it('says that what it says of itself was changed, left out, or said twice', () => {
    const fault = {
      code: 'verify.record-id',
      path: 'record',
      message: 'What the record says of itself (its id, and when it was begun) is not as it was written.',
    };
    const gone = readStore(record('DELETE FROM record'));
    expect([gone.recordId, gone.faults]).toEqual(['', [fault]]);
    expect(faultsOf("UPDATE record SET createdAt = '2020'")).toEqual([fault]);
    expect(faultsOf("UPDATE record SET programVersion = '9'")).toEqual([fault]);
    const about = { id: '6f1d3a52-0c4e-4b7a-9f21-3d5c8e7a1b01', createdAt: '', programVersion: '' };
    const twice = `INSERT INTO record VALUES (2, '${about.id}', '', '', '${sealOf(about)}')`;
    const unchecked = 'PRAGMA ignore_check_constraints = ON';
    expect(faultsOf(unchecked, twice)).toContainEqual(fault);
    // One row, well sealed, but not in the one place.
    expect(faultsOf(unchecked, 'DELETE FROM record', twice)).toContainEqual(fault);
  });
});

describe('the acts in it', () => {
  it('are fewer or more than were counted', () => {
    const counter = (held: number, said: number) => ({
      code: 'verify.places',
      path: 'record.db',
      message: `The record holds ${held} acts, and its counter says ${said}: acts were cut off, or the counter was changed.`,
    });
    expect(faultsOf('DELETE FROM events WHERE position = 3')).toEqual([counter(2, 3)]);
    expect(faultsOf('UPDATE sqlite_sequence SET seq = 7')).toEqual([counter(3, 7)]);
    expect(faultsOf('DELETE FROM sqlite_sequence')).toEqual([counter(3, 0)]);
    expect(faultsOf("INSERT INTO sqlite_sequence VALUES ('events', 3)")).toEqual([counter(3, 3)]);
    expect(faultsOf('DELETE FROM events', 'DELETE FROM sqlite_sequence')).toEqual([]);
    // The counter of another table is none of ours, but that table is told.
    expect(faultsOf("INSERT INTO sqlite_sequence VALUES ('others', 9)")).toEqual([]);
  });

  it('stand at another place than they should', () => {
    const found = readStore(record('UPDATE events SET position = position + 10 WHERE position = 3'));
    expect(found.faults).toContainEqual({
      code: 'verify.places',
      path: `event 13 (${third.id})`,
      message: 'This act stands at place 13 and should stand at 3: acts were taken out, or moved.',
    });
    expect(found.acts.map(({ position }) => position)).toEqual([1, 2, 3]);
  });

  const unreadable = (position: number) => ({
    code: 'verify.act-unreadable',
    path: place(position),
    message: 'This act is not as it was recorded: it cannot be read.',
  });

  it('can’t be read: no act, another spelling, torn', () => {
    for (const body of ["'{}'", "' ' || body", `replace(body, '"seq":2', '"seq":0')`]) {
      const found = readStore(record(`UPDATE events SET body = ${body} WHERE position = 2`));
      expect(found.faults).toEqual([unreadable(2)]);
      expect(found.acts.map(({ position }) => position)).toEqual([1, 3]);
    }
    const torn = record(
      'PRAGMA ignore_check_constraints = ON',
      "UPDATE events SET body = 'torn' WHERE position = 1",
    );
    expect(readStore(torn).faults).toContainEqual(unreadable(1));
  });

  it('can’t be read where a number or a hash is none', () => {
    const odd: [Partial<Record<keyof RecordedEvent, unknown>>, boolean][] = [
      [{}, true],
      [{ seq: 1.5 }, false],
      [{ hash: 'f'.repeat(63) }, false],
      [{ before: 'F'.repeat(64) }, false],
      [{ before: `${'f'.repeat(64)}f` }, false],
      [{ before: ` ${'f'.repeat(64)}` }, false],
      [{ origin: { record: 'theirs', seq: 0, before: first.hash, hash: first.hash } }, false],
      [{ origin: { record: 'theirs', seq: 1, before: first.hash, hash: first.hash } }, true],
      [{ kind: 'burned' }, false],
      [{ more: 1 } as never, false],
    ];
    for (const [more, reads] of odd) {
      const body = JSON.stringify({ ...second, ...more }).replaceAll("'", "''");
      const { acts: found } = readStore(record(`UPDATE events SET body = '${body}' WHERE position = 2`));
      expect(found.length, JSON.stringify(more)).toBe(reads ? 3 : 2);
    }
  });

  it('are kept under other names than they say themselves', () => {
    const differ = (...columns: string[]) => [
      {
        code: 'verify.columns-differ',
        path: place(2),
        message: `This act is kept under another ${columns.join(', ')} than it says itself.`,
      },
    ];
    const set = (what: string) => faultsOf(`UPDATE events SET ${what} WHERE position = 2`);
    expect(set("piece = 'two'")).toEqual(differ('piece'));
    expect(set("device = 'laptop'")).toEqual(differ('device'));
    expect(set('seq = 77')).toEqual(differ('seq'));
    expect(set(`hash = '${'0'.repeat(64)}'`)).toEqual(differ('hash'));
    expect(set("piece = 'two', device = 'laptop'")).toEqual(differ('piece', 'device'));
    const [moved] = set("id = 'other'");
    expect(moved).toMatchObject({ path: 'event 2 (other)', message: differ('id')[0]?.message });
  });
});
