import { copyFile, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { backupPaths, datedCopies } from '../../src/record/backup/backupFolder.ts';
import { type BackupRequest, makeBackup } from '../../src/record/backup/makeBackup.ts';
import { pruneBackups } from '../../src/record/backup/pruneBackups.ts';
import { restoreBackup } from '../../src/record/backup/restoreBackup.ts';
import { sourceFiles } from '../../src/record/backup/sourceFiles.ts';
import { verifyBackup } from '../../src/record/backup/verifyBackup.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { finding } from '../kits/drafts.ts';
import { sha256 } from '../kits/pictures.ts';
import { put, recordFolder } from '../kits/recordFolder.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

const [first = '', second = ''] = ['the first photo', 'the second photo'].map((text) =>
  sha256(Buffer.from(text)),
);

/** A back-up of a fresh record; throws what stood in the way. */
async function backedUp(more: Partial<BackupRequest> = {}) {
  const dataDir = more.dataDir ?? (await recordFolder());
  const folder = more.folder ?? join(await temporaryFolder(), 'copies');
  const made = await makeBackup({
    madeBy: 'hand',
    programVersion: '0.1.0',
    now: new Date('2026-11-30T09:15:30'),
    ...more,
    dataDir,
    folder,
  });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return { dataDir, ...made.value, dated: join(made.value.folder, made.value.name) };
}

/** Every file of a folder with its bytes, but the database, which a back-up packs anew. */
async function contents(dir: string): Promise<Record<string, string>> {
  const paths = await sourceFiles(dir);
  return Object.fromEntries(
    await Promise.all(paths.map(async (path) => [path, await readFile(join(dir, path), 'hex')])),
  );
}

const codes = (outcome: { ok: boolean; faults?: { code: string }[] }) =>
  outcome.faults?.map(({ code }) => code);

describe('a back-up', () => {
  it('holds the acts and every file, and says so with hashes', async () => {
    const { manifest, name, remarks } = await backedUp();
    expect(name).toBe('2026-11-30 09.15.30');
    expect(remarks).toEqual([]);
    expect(manifest.count).toBe(6);
    const photos = [first, second].sort().map((sha) => `photos/${sha.slice(0, 2)}/${sha}`);
    expect(manifest.files.map(({ path }) => path)).toEqual([
      'issued/one/1/opinion.pdf',
      'own-knowledge/own.yaml',
      ...photos,
      'settings.json',
    ]);
    expect(manifest).toMatchObject({ programVersion: '0.1.0', missing: [], recordFaults: [] });
  });

  it('copies a photo once, however many dated copies hold it', async () => {
    const one = await backedUp();
    const two = await backedUp({
      dataDir: one.dataDir,
      folder: one.folder,
      now: new Date('2026-12-01T09:00:00'),
    });
    expect(one.copied.files).toBe(5);
    expect(two.copied.files).toBe(0);
    expect((await datedCopies(one.folder)).map(({ name }) => name)).toEqual([two.name, one.name]);
  });

  it('is of one second, and is not written over by another of the same second', async () => {
    const one = await backedUp();
    const two = await backedUp({ dataDir: one.dataDir, folder: one.folder });
    expect(two.name).toBe(`${one.name} (2)`);
  });

  it('leaves no half of a copy behind when it fails', async () => {
    const { dataDir, folder, name } = await backedUp();
    await writeFile(
      join(dataDir, 'record.db'),
      'no database at all, and long enough to be read as one'.repeat(40),
    );
    const failed = await makeBackup({ dataDir, folder, madeBy: 'hand', programVersion: '', now: new Date() });
    expect(codes(failed)).toEqual(['backup.failed']);
    expect((await readdir(folder)).sort()).toEqual(
      [name, 'READ ME.txt', 'files', 'underside-backups.json'].sort(),
    );
  });

  it('mends a damaged file of the store from the record, and says so', async () => {
    const { dataDir, folder, dated } = await backedUp();
    await writeFile(backupPaths.stored(folder, first), 'rot');
    expect((await verifyBackup(folder, dated)).ok).toBe(false);
    const again = await backedUp({ dataDir, folder });
    expect(again.remarks).toEqual([expect.stringContaining('was damaged')]);
    expect((await verifyBackup(folder, dated)).faults).toEqual([]);
  });

  it('is made of a record that lacks a photo, and names what lacks', async () => {
    const dataDir = await recordFolder();
    await rm(join(dataDir, 'photos', first.slice(0, 2), first));
    const { manifest, remarks } = await backedUp({ dataDir });
    expect(manifest.missing.map(({ path }) => path)).toEqual([`photos/${first.slice(0, 2)}/${first}`]);
    expect(remarks).toEqual([expect.stringContaining(first)]);
  });

  it('goes into a folder of its own where others’ things are, never into the data folder', async () => {
    const disk = await temporaryFolder();
    await put(join(disk, 'letters.txt'), 'Dear …');
    const { dataDir, folder } = await backedUp({ folder: disk });
    expect(folder).toBe(join(disk, 'underside-backups'));
    const inside = await makeBackup({
      dataDir,
      folder: join(dataDir, 'copies'),
      madeBy: 'hand',
      programVersion: '',
      now: new Date(),
    });
    expect(codes(inside)).toEqual(['backup.inside-record']);
  });

  it('is for its user alone', async () => {
    const { dated } = await backedUp();
    expect((await stat(dated)).mode & 0o077).toBe(0);
    expect((await stat(join(dated, 'manifest.json'))).mode & 0o077).toBe(0);
  });

  it('shows any one byte that is changed in it', async () => {
    const { folder, dated } = await backedUp();
    const names = (await readdir(folder, { recursive: true })).map((name) => join(folder, name));
    const inUse = names.filter((name) => /files\/..\/|record\.db$|manifest\.json$/.test(name));
    expect(inUse.length).toBe(7);
    for (const [index, path] of inUse.entries()) {
      const before = await readFile(path);
      const place = (index * 997) % before.length;
      const after = Buffer.from(before);
      after[place] = (after[place] ?? 0) ^ 0x10;
      await writeFile(path, after);
      expect((await verifyBackup(folder, dated)).ok, `${path} at ${place}`).toBe(false);
      await writeFile(path, before);
    }
    expect((await verifyBackup(folder, dated)).ok).toBe(true);
  });
});

describe('restoring', () => {
  it('brings back every file byte for byte, and a record that verifies with the same heads', async () => {
    const { dataDir, folder, manifest } = await backedUp();
    const to = join(await temporaryFolder(), 'again');
    const restored = await restoreBackup({ backup: folder, to });
    expect(restored).toMatchObject({ ok: true, value: { lacking: [], remarks: [] } });
    expect(await contents(to)).toEqual(await contents(dataDir));
    expect(sha256(await readFile(join(to, 'record.db')))).toBe(manifest.database.sha256);
    const [was, is] = [await verifyRecord(dataDir), await verifyRecord(to)];
    expect(is.ok).toBe(true);
    expect(is).toEqual(was);
    const history = (dir: string) => {
      const log = sqliteLog(join(dir, 'record.db'), { readOnly: true });
      return log.ofPiece('one');
    };
    expect(history(to)).toEqual(history(dataDir));
  });

  it('never writes over anything', async () => {
    const { folder } = await backedUp();
    const to = await temporaryFolder();
    await put(join(to, 'mine.txt'), 'mine');
    expect(codes(await restoreBackup({ backup: folder, to }))).toEqual(['restore.not-empty']);
    expect(await readdir(to)).toEqual(['mine.txt']);
  });

  it('refuses a damaged copy and says what is wrong, and brings back what is whole when asked', async () => {
    const { folder, dated } = await backedUp();
    await writeFile(backupPaths.stored(folder, first), 'rot');
    const to = join(await temporaryFolder(), 'again');
    const refused = await restoreBackup({ backup: dated, to });
    expect(codes(refused)).toEqual(['restore.damaged', 'backup.file-changed']);
    const restored = await restoreBackup({ backup: dated, to, evenIfDamaged: true });
    expect(restored).toMatchObject({
      ok: true,
      value: { lacking: [{ path: `photos/${first.slice(0, 2)}/${first}` }] },
    });
    expect((await verifyRecord(to)).faults.map(({ code }) => code)).toEqual(['verify.photo-missing']);
  });

  it('takes the newest copy that is whole, and names the newer ones it passed over', async () => {
    const one = await backedUp();
    const two = await backedUp({
      dataDir: one.dataDir,
      folder: one.folder,
      now: new Date('2026-12-01T09:00:00'),
    });
    const database = await readFile(join(two.dated, 'record.db'));
    database[database.length - 1] = (database.at(-1) ?? 0) ^ 1;
    await writeFile(join(two.dated, 'record.db'), database);
    const restored = await restoreBackup({ backup: one.folder, to: join(await temporaryFolder(), 'again') });
    expect(restored).toMatchObject({ ok: true, value: { name: one.name } });
    expect(restored.ok && restored.value.remarks).toEqual([expect.stringContaining(two.name)]);
  });

  it('says where there is no back-up', async () => {
    const to = join(await temporaryFolder(), 'again');
    expect(codes(await restoreBackup({ backup: await temporaryFolder(), to }))).toEqual([
      'restore.no-backup',
    ]);
  });
});

describe('thinning out', () => {
  it('removes what the program made and newer copies stand for, and keeps those made by hand and those not whole', async () => {
    const { dataDir, folder, name: byHand } = await backedUp({ now: new Date('2026-01-05T09:00:00') });
    const day = (text: string) => backedUp({ dataDir, folder, madeBy: 'itself', now: new Date(text) });
    const morning = await day('2026-11-29T08:00:00');
    const spoiled = await day('2026-11-29T09:00:00');
    const noon = await day('2026-11-29T12:00:00');
    const newest = await day('2026-11-30T12:00:00');
    await writeFile(join(spoiled.dated, 'record.db'), 'rot');
    const { removed, remarks } = await pruneBackups(folder, newest.name);
    expect(removed).toEqual([morning.name]);
    expect(remarks).toEqual([expect.stringContaining(spoiled.name)]);
    const left = (await datedCopies(folder)).map(({ name }) => name);
    expect(left).toEqual([newest.name, noon.name, spoiled.name, byHand]);
    expect((await verifyBackup(folder, noon.dated)).ok).toBe(true);
  });

  it('removes nothing on the strength of a copy it can’t find', async () => {
    const { dataDir, folder } = await backedUp({ madeBy: 'itself' });
    await backedUp({ dataDir, folder, madeBy: 'itself' });
    expect((await pruneBackups(folder, 'another')).removed).toEqual([]);
  });
});

it('a copy of the one file holds all acts once nothing was entered for a second', async () => {
  const dataDir = await recordFolder();
  const log = sqliteLog(join(dataDir, 'record.db'));
  const store = createStore(log);
  for (let n = 0; n < 50; n++) store.append([finding('one', `late-${n}`, 'splat')]);
  await new Promise((resolve) => setTimeout(resolve, 1500));
  const to = await temporaryFolder();
  await copyFile(join(dataDir, 'record.db'), join(to, 'record.db'));
  log.close();
  expect((await verifyRecord(to)).events).toBe(56);
});

it('a copy made while acts are still in the write-ahead file holds them', async () => {
  const dataDir = await recordFolder();
  const log = sqliteLog(join(dataDir, 'record.db'));
  const store = createStore(log);
  for (let n = 0; n < 50; n++) store.append([finding('one', `late-${n}`, 'splat')]);
  const { manifest } = await backedUp({ dataDir });
  log.close();
  expect(manifest.count).toBe(56);
});
