import { readFile, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { expect } from 'vitest';
import { seededRandom } from '../../src/ground/seededRandom.ts';
import { sourceFiles } from '../../src/record/backup/sourceFiles.ts';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { finding } from './drafts.ts';
import { lookOverHttp } from './lookOverHttp.ts';
import { recordFolder } from './recordFolder.ts';

/** What came of the trials: those that changed what stands in the record, those of them that were found, those not opened. */
export type Trials = {
  inUse: number;
  found: number;
  unused: number;
  foundUnused: number;
  notOpened: number;
};

/**
 * Changes one byte of the database or of a photo, `trials` times over from the sound record: a change is in use when it
 * changes what can be read from the file, or when the file can't be read any more. Checking must find each of these,
 * and never throw; the program must open the record and answer, or say in a sentence why not.
 */
export async function changeBytes(trials: number, seed: number): Promise<Trials> {
  const dir = await recordFolder();
  const store = createStore(sqliteLog(join(dir, 'record.db')));
  for (let n = 0; n < 60; n++) store.append([finding('one', `sign-${n}`, n % 2 ? 'splat' : 'seat')]);
  store.close();
  expect(await verifyRecord(dir)).toMatchObject({ ok: true, faults: [] });
  const database = join(dir, 'record.db');
  const photos = (await sourceFiles(dir)).filter((path) => path.startsWith('photos/'));
  const sound = contents(database);
  const soundBytes = await readFile(database);
  const shas = photos.map((path) => basename(path));
  const told: Trials = { inUse: 0, found: 0, unused: 0, foundUnused: 0, notOpened: 0 };
  const next = wholeNumbers(seed);
  for (let trial = 0; trial < trials; trial++) {
    const file = next(6) === 0 ? join(dir, photos[next(photos.length)] ?? '') : database;
    const bytes = await readFile(file);
    const changed = Buffer.from(bytes);
    const at = next(bytes.length);
    changed[at] = (changed[at] ?? 0) ^ (1 + next(255));
    await writeFile(file, changed);
    const inUse = file !== database || contents(database) !== sound;
    const { ok } = await verifyRecord(dir);
    if (inUse) told.inUse++;
    else told.unused++;
    if (!ok && inUse) told.found++;
    if (!ok && !inUse) told.foundUnused++;
    expect.soft(ok && inUse, `byte ${at} of ${file}, ${bytes[at]} to ${changed[at]}`).toBe(false);
    const { refusal, complaints } = await lookOverHttp(dir, shas);
    expect.soft(complaints, `byte ${at} of ${file}, ${bytes[at]} to ${changed[at]}`).toEqual([]);
    if (refusal !== undefined) told.notOpened++;
    await writeFile(file, bytes);
    // What was entered meanwhile goes: each trial begins from the sound record.
    await writeFile(database, soundBytes);
    for (const beside of ['-wal', '-shm']) await rm(`${database}${beside}`, { force: true });
  }
  return told;
}

/** All that can be read from a database, as one text. */
function contents(file: string): string {
  try {
    const database = openSqlite(file, { readOnly: true });
    try {
      const all = ['sqlite_schema', 'events', 'record', 'sqlite_sequence'].map((table) =>
        database.prepare(`SELECT * FROM ${table} ORDER BY rowid`).all(),
      );
      return JSON.stringify([database.pragma('user_version'), ...all]);
    } finally {
      database.close();
    }
  } catch {
    return 'cannot be read';
  }
}

/** Whole numbers below a bound, from a seed. */
function wholeNumbers(seed: number): (below: number) => number {
  const random = seededRandom(seed);
  return (below) => Math.floor(random() * below);
}
