import { existsSync } from 'node:fs';
import { chmod, mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { EventLog } from '../../src/record/eventLog.ts';
import { CannotOpen } from '../../src/record/fault.ts';
import { memoryLog } from '../../src/record/memoryLog.ts';
import { openDataFolder } from '../../src/record/openDataFolder.ts';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import { createStore } from '../../src/record/store.ts';
import { finding, opening } from '../kits/drafts.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

function whyNot(dir: string): string {
  try {
    const { log, lock } = openDataFolder(dir);
    log.close();
    lock.release();
    return 'opened';
  } catch (error) {
    if (error instanceof CannotOpen) return `${error.code}: ${error.message}`;
    throw error;
  }
}

describe('opening a data folder', () => {
  it('makes it, with whatever its name is', async () => {
    const dir = join(await temporaryFolder(), 'a folder', "with 'quotes' & ünïcode 椅子");
    expect(whyNot(dir)).toBe('opened');
    expect(whyNot(dir)).toBe('opened');
  });

  it('refuses a record of a newer program, and leaves it as it is', async () => {
    const dir = await temporaryFolder();
    expect(whyNot(dir)).toBe('opened');
    const database = openSqlite(join(dir, 'record.db'));
    database.pragma('journal_mode = DELETE');
    database.pragma('user_version = 99');
    database.close();
    const before = await readFile(join(dir, 'record.db'));
    expect(whyNot(dir)).toMatch(
      /^record\.newer-store: The record .* was written by a newer Underside \(version 99 .*--data, or look at this one with --read-only\.$/,
    );
    expect((await readFile(join(dir, 'record.db'))).equals(before)).toBe(true);
  });

  it('refuses a file that is no record, and leaves it as it is', async () => {
    const dir = await temporaryFolder();
    const letter = 'Dear Sir, this is not a record at all. '.repeat(40);
    await writeFile(join(dir, 'record.db'), letter);
    expect(whyNot(dir)).toMatch(/^record\.not-a-record/);
    expect(await readFile(join(dir, 'record.db'), 'utf8')).toBe(letter);
  });

  it('refuses a name that is a file, and a folder in which nothing can be made', async () => {
    const dir = await temporaryFolder();
    await writeFile(join(dir, 'file'), '');
    expect(whyNot(join(dir, 'file'))).toMatch(
      /^record\.folder-not-writable: The folder .* cannot be written/,
    );
    expect(whyNot(join(dir, 'file', 'below'))).toMatch(/^record\.folder-not-writable/);
    expect(whyNot('/proc/underside')).toMatch(/^record\.folder-not-writable/);
  });

  it('never begins anew beside photos whose record is gone', async () => {
    const dir = await temporaryFolder();
    expect(whyNot(dir)).toBe('opened');
    await mkdir(join(dir, 'photos', 'ab'), { recursive: true });
    await rm(join(dir, 'record.db'));
    expect(whyNot(dir), 'an empty folder of photos is no record').toBe('opened');
    await writeFile(join(dir, 'photos', 'ab', 'abc'), 'a photo');
    await rm(join(dir, 'record.db'));
    expect(whyNot(dir)).toMatch(/^record\.lost: The folder .* holds photos but no record\.db, .*restore.*/);
    expect(existsSync(join(dir, 'record.db'))).toBe(false);
    await writeFile(join(dir, 'record.db'), '');
    expect(whyNot(dir)).toMatch(
      /^record\.lost: The folder .* holds photos but a record\.db with nothing in it, .*restore.*/,
    );
    expect((await stat(join(dir, 'record.db'))).size).toBe(0);
  });

  it('refuses a database of another program, and leaves it as it is', async () => {
    const dir = await temporaryFolder();
    const database = openSqlite(join(dir, 'record.db'));
    database.exec('CREATE TABLE letters (words TEXT)');
    database.close();
    expect(whyNot(dir)).toMatch(/^record\.not-a-record/);
  });

  it.skipIf(process.platform === 'win32')(
    'keeps all of it to its owner, what is there already too',
    async () => {
      const dir = await temporaryFolder();
      await mkdir(join(dir, 'photos', 'ab'), { recursive: true, mode: 0o755 });
      expect(whyNot(dir)).toBe('opened');
      await writeFile(join(dir, 'photos', 'ab', 'abc'), 'a photo', { mode: 0o644 });
      for (const path of ['', 'photos', 'photos/ab']) await chmod(join(dir, path), 0o755);
      for (const path of ['record.db', 'photos/ab/abc']) await chmod(join(dir, path), 0o644);
      const { log, lock } = openDataFolder(dir);
      const modeOf = async (path: string) => ((await stat(join(dir, path))).mode & 0o777).toString(8);
      for (const path of ['', 'photos', 'photos/ab']) expect(await modeOf(path), path).toBe('700');
      for (const path of ['record.db', 'record.db-wal', 'photos/ab/abc', 'running.json'])
        expect(await modeOf(path), path).toBe('600');
      log.close();
      lock.release();
    },
  );

  it.skipIf(process.platform === 'win32')(
    'leaves a folder with other things in it as it is, but for ours',
    async () => {
      const dir = await temporaryFolder();
      await chmod(dir, 0o755);
      await writeFile(join(dir, 'letter.txt'), 'Dear Sir');
      await chmod(join(dir, 'letter.txt'), 0o644);
      expect(whyNot(dir)).toBe('opened');
      expect((await stat(dir)).mode & 0o777).toBe(0o755);
      expect((await stat(join(dir, 'letter.txt'))).mode & 0o777).toBe(0o644);
      expect((await stat(join(dir, 'record.db'))).mode & 0o777).toBe(0o600);
    },
  );

  it('gives the folder to one program at a time, and to the next when that one has ended', async () => {
    const dir = await temporaryFolder();
    const first = openDataFolder(dir);
    first.lock.sayAddress('http://127.0.0.1:4717/');
    expect(whyNot(dir)).toMatch(
      /^record\.in-use: Underside is already running on the folder .* at http:\/\/127\.0\.0\.1:4717\/ \(process \d+\): use that one/,
    );
    first.log.close();
    first.lock.release();
    expect(whyNot(dir)).toBe('opened');
  });

  it('is not held up by what a killed program left behind', async () => {
    const dir = await temporaryFolder();
    await writeFile(
      join(dir, 'running.json'),
      JSON.stringify({ pid: process.pid, address: 'http://127.0.0.1:1/' }),
    );
    await writeFile(join(dir, 'running.lock'), '');
    expect(whyNot(dir)).toBe('opened');
  });
});

describe('a disk that is full', () => {
  it('refuses the act, keeps what was there, and takes the same act when there is room', () => {
    const kept = memoryLog();
    const disk = { full: false };
    const log: EventLog = {
      ...kept,
      append(events) {
        if (disk.full) throw Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' });
        return kept.append(events);
      },
    };
    const store = createStore(log);
    store.append([opening('one')]);
    const before = store.piece('one');
    const mark = finding('one', 'a', 'splat');
    disk.full = true;
    expect(store.append([mark])).toMatchObject({ ok: false, faults: [{ code: 'record.disk-full' }] });
    expect(store.piece('one')).toEqual(before);
    disk.full = false;
    expect(store.append([mark]).ok).toBe(true);
    expect(store.piece('one')?.canUndo).toBe(true);
  });

  it('is told apart by what SQLite itself says when a file may not grow', async () => {
    const dir = await temporaryFolder();
    const database = openSqlite(join(dir, 'full.db'));
    onTestFinished(() => {
      database.close();
    });
    database.exec('CREATE TABLE t (x TEXT)');
    database.pragma('max_page_count = 4');
    expect(() => database.prepare('INSERT INTO t VALUES (?)').run('x'.repeat(100_000))).toThrow(
      expect.objectContaining({ code: 'SQLITE_FULL' }),
    );
  });
});
