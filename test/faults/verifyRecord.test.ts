import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hashEvent } from '../../src/record/chain.ts';
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

/** Changes the file behind the program's back, as somebody with an editor would. */
function tamper(dir: string, ...statements: string[]): void {
  const database = openSqlite(join(dir, 'record.db'));
  database.exec('DROP TRIGGER events_are_new; DROP TRIGGER events_stay; DROP TRIGGER events_are_kept;');
  for (const one of statements) database.exec(one);
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
    expect(await codes(dir)).toEqual(['verify.chain-broken']);
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
