import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openDataFolder } from '../../src/record/openDataFolder.ts';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { finding } from '../kits/drafts.ts';
import { keptActs, writeFirstVersionRecord } from '../kits/firstVersionRecord.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

async function firstVersion(): Promise<string> {
  const dir = await temporaryFolder();
  writeFirstVersionRecord(dir);
  return dir;
}

function open(dir: string) {
  const { log, lock } = openDataFolder(dir, '9.9.9');
  const store = createStore(log);
  const close = () => {
    store.close();
    lock.release();
  };
  return { store, close };
}

function read(dir: string, question: string): unknown[] {
  const database = openSqlite(join(dir, 'record.db'));
  try {
    return database.prepare(question).all();
  } finally {
    database.close();
  }
}

describe('a record of the first version', () => {
  it('is given an id once, and keeps every act as it was', async () => {
    const dir = await firstVersion();
    const first = open(dir);
    expect(first.store.recordId).toMatch(uuid);
    expect(first.store.history('golden')).toEqual(keptActs);
    expect(first.store.append([finding('golden', 'late', 'splat')]).ok).toBe(true);
    first.close();
    const again = open(dir);
    expect(again.store.recordId).toBe(first.store.recordId);
    expect(again.store.head().count).toBe(4);
    again.close();
    expect(read(dir, 'SELECT id, programVersion FROM record')).toEqual([
      { id: first.store.recordId, programVersion: '9.9.9' },
    ]);
    expect(read(dir, 'PRAGMA user_version')).toEqual([{ user_version: 2 }]);
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, events: 4 });
  });

  it('can be looked at without being changed', async () => {
    const dir = await firstVersion();
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, events: 3 });
    const log = sqliteLog(join(dir, 'record.db'), { readOnly: true });
    expect(log.recordId).toBe('');
    log.close();
    expect(read(dir, 'PRAGMA user_version')).toEqual([{ user_version: 1 }]);
  });

  it('is left as it was when the step to the new version fails on its way', async () => {
    const dir = await firstVersion();
    const database = openSqlite(join(dir, 'record.db'));
    // A table of that name stands in the way of the second half of the step.
    database.exec('CREATE TABLE record (x TEXT) STRICT');
    database.close();
    expect(() => openDataFolder(dir)).toThrow(expect.objectContaining({ code: 'record.cannot-open' }));
    expect(read(dir, 'PRAGMA user_version')).toEqual([{ user_version: 1 }]);
    expect(read(dir, 'SELECT count(*) AS n FROM events')).toEqual([{ n: 3 }]);
    expect(read(dir, 'SELECT * FROM record')).toEqual([]);
  });
});

describe('the id of a record', () => {
  it('is another for every record, and is never changed or removed', async () => {
    const [one, other] = [await temporaryFolder(), await temporaryFolder()];
    const ids = [one, other].map((dir) => {
      const { store, close } = open(dir);
      close();
      return store.recordId;
    });
    expect(ids[0]).not.toBe(ids[1]);
    const database = openSqlite(join(one, 'record.db'));
    expect(() => database.exec("UPDATE record SET id = 'x'")).toThrow('never changed');
    expect(() => database.exec('DELETE FROM record')).toThrow('never removed');
    expect(() => database.exec('INSERT OR REPLACE INTO record SELECT * FROM record')).toThrow('has one id');
    database.close();
  });
});
