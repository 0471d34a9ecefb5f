import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chainStart, hashEvent, linkEvent } from '../../src/record/chain.ts';
import { photoPaths } from '../../src/record/photoPaths.ts';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { act, finding, opening, step } from '../kits/drafts.ts';
import { sha256 } from '../kits/pictures.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

const photoBytes = Buffer.from('bytes of a photo');
const sha = sha256(photoBytes);

/** A record of two devices with a photo, an undo and a redo; as it should be. */
async function soundRecord(): Promise<string> {
  const dir = await temporaryFolder();
  const log = sqliteLog(join(dir, 'record.db'));
  const store = createStore(log);
  const photo = {
    id: 'p1',
    sha256: sha,
    mediaType: 'image/jpeg',
    name: 'a.jpg',
    bytes: photoBytes.length,
    widthPx: 1,
    heightPx: 1,
  };
  store.append([
    opening('one'),
    finding('one', 'a', 'splat'),
    finding('one', 'b', 'splat', { device: 'laptop' }),
  ]);
  store.append([act('one', 'photo-added', [{ path: ['photos', 'p1'], to: photo }])]);
  store.undo('one', step());
  store.redo('one', step({ device: 'laptop' }));
  log.close();
  await keepPhoto(dir, sha, photoBytes);
  return dir;
}

async function keepPhoto(dir: string, name: string, bytes: Uint8Array): Promise<void> {
  const path = photoPaths(dir).original(name);
  await mkdir(join(path, '..'), { recursive: true });
  await writeFile(path, bytes);
}

/** Changes the file behind the program's back, as somebody with an editor would, and puts the triggers back after. */
function tamper(dir: string, ...statements: string[]): void {
  const database = openSqlite(join(dir, 'record.db'));
  const triggers = database
    .prepare<{ name: string; sql: string }>("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
    .all();
  for (const { name } of triggers) database.exec(`DROP TRIGGER ${name}`);
  for (const one of statements) database.exec(one);
  for (const { sql } of triggers) database.exec(sql);
  database.close();
}

const codes = async (dir: string) => [
  ...new Set((await verifyRecord(dir)).faults.map((fault) => fault.code)),
];

describe('verifying a record', () => {
  it('finds nothing wrong where nothing is, and gives the head of each device', async () => {
    const found = await verifyRecord(await soundRecord());
    expect(found).toMatchObject({ ok: true, events: 6, pieces: 1, photos: 1, faults: [], remarks: [] });
    expect(found.devices.map(({ device, events }) => [device, events])).toEqual([
      ['tablet-1', 4],
      ['laptop', 2],
    ]);
  });

  it('may run beside the program', async () => {
    const dir = await soundRecord();
    const log = sqliteLog(join(dir, 'record.db'));
    expect((await verifyRecord(dir)).ok).toBe(true);
    log.close();
  });

  it('shows an act that was changed', async () => {
    const dir = await soundRecord();
    tamper(dir, `UPDATE events SET body = replace(body, '"present"', '"absent"') WHERE position = 2`);
    expect(await codes(dir)).toContain('verify.act-changed');
  });

  it('shows an act that was changed and given a hash that fits it', async () => {
    const dir = await soundRecord();
    const database = openSqlite(join(dir, 'record.db'));
    const { body } = database.prepare('SELECT body FROM events WHERE position = 2').get() as { body: string };
    database.close();
    const forged = JSON.parse(body.replace('"present"', '"absent"'));
    forged.hash = hashEvent(forged);
    tamper(
      dir,
      `UPDATE events SET hash = '${forged.hash}', body = '${JSON.stringify(forged)}' WHERE position = 2`,
    );
    expect(await codes(dir)).toContain('verify.chain-broken');
  });

  it('shows an act that was taken out', async () => {
    const dir = await soundRecord();
    tamper(dir, 'DELETE FROM events WHERE position = 2');
    expect(await codes(dir)).toEqual(['verify.places', 'verify.chain-broken']);
  });

  it('shows a last act that lies about what stood there before, though its hash fits', async () => {
    const dir = await soundRecord();
    const database = openSqlite(join(dir, 'record.db'));
    const { body } = database.prepare('SELECT body FROM events WHERE position = 5').get() as { body: string };
    database.close();
    const forged = JSON.parse(body);
    forged.changes[0].from = { id: 'p1' };
    forged.hash = hashEvent(forged);
    tamper(
      dir,
      `UPDATE events SET hash = '${forged.hash}', body = '${JSON.stringify(forged)}' WHERE position = 5`,
    );
    expect(await codes(dir)).toEqual(['verify.before-differs']);
  });

  it('shows a photo whose bytes were changed, one that is missing, and remarks on one that nobody names', async () => {
    const dir = await soundRecord();
    const other = sha256(Buffer.from('another'));
    await keepPhoto(dir, other, Buffer.from('another'));
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, remarks: [expect.stringContaining(other)] });
    await keepPhoto(dir, sha, Buffer.from('retouched'));
    expect(await codes(dir)).toEqual(['verify.photo-changed']);
    await rm(photoPaths(dir).original(sha));
    expect(await codes(dir)).toEqual(['verify.photo-missing']);
  });

  it('says so when there is no record, or no record of ours', async () => {
    const dir = await temporaryFolder();
    expect(await codes(dir)).toEqual(['verify.no-record']);
    await writeFile(
      join(dir, 'record.db'),
      'a letter to the editor, long enough to be looked at as a file of something',
    );
    expect(await codes(dir)).toEqual(['record.not-a-record']);
  });
});

describe('the file of a record', () => {
  it.each(['id', 'piece', 'device', 'seq', 'hash'])(
    'shows a column %s that differs from the act',
    async (column) => {
      const dir = await soundRecord();
      const to = column === 'seq' ? '77' : column === 'hash' ? `'${'0'.repeat(64)}'` : "'other'";
      tamper(dir, `UPDATE events SET ${column} = ${to} WHERE position = 4`);
      expect(await codes(dir)).toContain('verify.columns-differ');
    },
  );

  it('shows acts that changed places', async () => {
    const dir = await soundRecord();
    tamper(dir, 'UPDATE events SET position = position + 10 WHERE position = 6');
    expect(await codes(dir)).toEqual(['verify.places']);
  });

  it('shows an act that is no act', async () => {
    const dir = await soundRecord();
    tamper(dir, `UPDATE events SET body = '{"changes":7}' WHERE position = 6`);
    expect(await codes(dir)).toEqual(['verify.act-unreadable']);
  });

  it('shows an act written in another spelling', async () => {
    const dir = await soundRecord();
    tamper(dir, "UPDATE events SET body = ' ' || body WHERE position = 6");
    expect(await codes(dir)).toEqual(['verify.act-unreadable']);
  });

  it.each([
    ['taken away', 'DROP TRIGGER events_stay'],
    ['put in', 'CREATE TRIGGER silent BEFORE INSERT ON events BEGIN SELECT RAISE(IGNORE); END'],
    ['changed', 'DROP INDEX events_of_piece; CREATE INDEX events_of_piece ON events (piece)'],
  ])('shows tables, indexes and triggers that were %s', async (_what, statement) => {
    const dir = await soundRecord();
    const database = openSqlite(join(dir, 'record.db'));
    database.exec(statement);
    database.close();
    expect(await codes(dir)).toEqual(['verify.schema']);
  });

  it('shows an id that is not the one the record was given', async () => {
    const dir = await soundRecord();
    tamper(dir, "UPDATE record SET id = replace(id, '-4', '-5')");
    expect(await codes(dir)).toEqual(['verify.record-id']);
  });

  it('that was cut short is told in plain faults', async () => {
    const dir = await soundRecord();
    const file = join(dir, 'record.db');
    const bytes = await readFile(file);
    for (const part of [0.25, 0.5, 0.9]) {
      await writeFile(file, bytes.subarray(0, Math.floor(bytes.length * part)));
      const { faults } = await verifyRecord(dir);
      expect(faults[0]?.code).toBe('verify.file-damaged');
      expect(faults[0]?.message).not.toMatch(/at .*:\d+/);
    }
  });

  it('takes no act as written that a trigger made away with', async () => {
    const dir = await soundRecord();
    const database = openSqlite(join(dir, 'record.db'));
    database.exec('CREATE TRIGGER silent BEFORE INSERT ON events BEGIN SELECT RAISE(IGNORE); END');
    database.close();
    const store = createStore(sqliteLog(join(dir, 'record.db')));
    expect(store.append([finding('one', 'c', 'splat')])).toMatchObject({
      ok: false,
      faults: [{ code: 'record.could-not-write' }],
    });
    store.close();
  });
});

describe('a head that was noted', () => {
  const headOf = async (dir: string) => {
    const { head } = await verifyRecord(dir);
    return head;
  };
  const against = async (dir: string, noted: { hash: string; count?: number }) =>
    (await verifyRecord(dir, noted)).faults.map((fault) => fault.code);

  it('holds now, and after the record has grown, with its count or without', async () => {
    const dir = await soundRecord();
    const noted = await headOf(dir);
    expect(noted.count).toBe(6);
    expect(await against(dir, noted)).toEqual([]);
    const store = createStore(sqliteLog(join(dir, 'record.db')));
    store.append([finding('one', 'c', 'splat')]);
    expect(store.head()).toEqual(await headOf(dir));
    store.close();
    expect(await against(dir, noted)).toEqual([]);
    expect(await against(dir, { hash: noted.hash })).toEqual([]);
    expect(await against(dir, { ...noted, count: 5 })).toEqual(['verify.other-head']);
  });

  it('shows a chain written anew from its beginning, in which all else holds', async () => {
    const dir = await soundRecord();
    const noted = await headOf(dir);
    const log = sqliteLog(join(dir, 'record.db'), { readOnly: true });
    const acts = log.ofPiece('one').map((one) => one.event);
    log.close();
    const heads = new Map<string, { seq: number; hash: string }>();
    const anew = acts.map(({ seq: _seq, before: _before, hash: _hash, ...draft }) => {
      const who = draft.id === acts[1]?.id ? 'somebody else' : draft.who;
      const event = linkEvent({ ...draft, who }, heads.get(draft.device) ?? chainStart);
      heads.set(draft.device, event);
      return event;
    });
    const text = (words: string) => `'${words.replaceAll("'", "''")}'`;
    tamper(
      dir,
      ...anew.map(
        (one) =>
          `UPDATE events SET hash = '${one.hash}', body = ${text(JSON.stringify(one))} WHERE id = '${one.id}'`,
      ),
    );
    expect(await codes(dir)).toEqual([]);
    expect(await against(dir, noted)).toEqual(['verify.other-head']);
    expect(await against(dir, { hash: noted.hash })).toEqual(['verify.other-head']);
  });

  it('shows a tail cut off, in which all else holds', async () => {
    const dir = await soundRecord();
    const noted = await headOf(dir);
    tamper(
      dir,
      'DELETE FROM events WHERE position = 6',
      "UPDATE sqlite_sequence SET seq = 5 WHERE name = 'events'",
    );
    expect(await codes(dir)).toEqual([]);
    const [fault] = (await verifyRecord(dir, noted)).faults;
    expect(fault?.message).toMatch(/noted after 6 acts, and the record holds 5/);
  });
});

describe('the tables of the record', () => {
  it('refuse that an act is changed or removed', async () => {
    const dir = await soundRecord();
    const database = openSqlite(join(dir, 'record.db'));
    expect(() => database.exec("UPDATE events SET body = '{}'")).toThrow('an event is never changed');
    expect(() => database.exec('DELETE FROM events')).toThrow('an event is never removed');
    expect(() =>
      database.exec('INSERT OR REPLACE INTO events SELECT * FROM events WHERE position = 1'),
    ).toThrow('in the place of another');
    expect(database.prepare('SELECT count(*) AS n FROM events').get()).toEqual({ n: 6 });
    database.close();
  });
});
