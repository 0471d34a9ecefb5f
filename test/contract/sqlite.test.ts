import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { firstOf, sqliteDriver } from '../../src/record/sqlite/driver.ts';
import { openSqlite, type SqliteOptions } from '../../src/record/sqlite/openSqlite.ts';
import { SqliteFault } from '../../src/record/sqlite/sqliteFault.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

// `npm test` runs this file twice, over the SQLite of two kinds of Node: both must do all of it alike.

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);

/** node:sqlite needs no flag from 22.13 and 23.4 on. Source: Node.js, “SQLite”, history. */
const builtIn = major >= 24 || (major === 23 && minor >= 4) || (major === 22 && minor >= 13);

function open(file: string, options?: SqliteOptions) {
  const database = openSqlite(file, options);
  onTestFinished(() => database.close());
  return database;
}

function codeOf(work: () => unknown): string {
  try {
    work();
    return 'done';
  } catch (error) {
    return error instanceof SqliteFault ? error.code : String(error);
  }
}

const inFolder = async (name = 'a.db') => join(await temporaryFolder(), name);

describe('the SQLite of this Node', () => {
  it('is the one built in where there is one, else the package', () => {
    expect(sqliteDriver().name).toBe(builtIn ? 'node:sqlite' : 'better-sqlite3');
  });

  it('is said to be lacking, with what to do, where there is none', () => {
    expect(() => firstOf([() => undefined, () => undefined])).toThrow(
      expect.objectContaining({
        code: 'record.no-sqlite',
        message: expect.stringMatching(/^Underside keeps its record with SQLite, .* install Node 24 .*\.$/),
      }),
    );
  });

  it('gives back texts of any script, whole numbers, fractions, bytes and nothing', async () => {
    const database = open(await inFolder());
    database.exec('CREATE TABLE t (a TEXT, b INTEGER, c REAL, d BLOB, e TEXT)');
    const text = 'fünf 椅子 🪑 \u0000 end';
    const put = database.prepare('INSERT INTO t VALUES (?, ?, ?, ?, ?)');
    expect(put.run(text, 2 ** 50, 0.1, Uint8Array.of(0, 255), null)).toEqual({
      changes: 1,
      lastInsertRowid: 1,
    });
    const row = database.prepare<{ d: Uint8Array }>('SELECT * FROM t').get();
    expect({ ...row, d: [...(row?.d ?? [])] }).toEqual({ a: text, b: 2 ** 50, c: 0.1, d: [0, 255], e: null });
    expect(database.prepare('SELECT * FROM t WHERE b = ?').get(7)).toBeUndefined();
    expect(database.prepare('SELECT * FROM t WHERE b = ?').all(7)).toEqual([]);
  });

  it('reads and sets pragmas', async () => {
    const database = open(await inFolder());
    database.pragma('journal_mode = WAL');
    database.pragma('user_version = 7');
    expect(database.pragma('journal_mode')).toBe('wal');
    expect(database.pragma('user_version')).toBe(7);
  });

  it('does all of a transaction or none of it', async () => {
    const database = open(await inFolder());
    database.exec('CREATE TABLE t (a TEXT UNIQUE)');
    const put = database.prepare('INSERT INTO t VALUES (?)');
    const count = () => database.prepare('SELECT count(*) AS n FROM t').get();
    expect(database.inTransaction(() => put.run('x').changes)).toBe(1);
    expect(
      codeOf(() =>
        database.inTransaction(() => {
          put.run('y');
          put.run('x');
        }),
      ),
    ).toBe('SQLITE_CONSTRAINT');
    expect(count()).toEqual({ n: 1 });
    expect(() =>
      database.inTransaction(() => {
        put.run('z');
        throw new RangeError('of our own');
      }),
    ).toThrow(RangeError);
    expect(count()).toEqual({ n: 1 });
    database.inTransaction(() => put.run('z'));
    expect(count()).toEqual({ n: 2 });
  });
});

describe('what SQLite refuses has one name whichever driver says it', () => {
  it('SQLITE_BUSY where another holds the file', async () => {
    const file = await inFolder();
    open(file).exec('BEGIN EXCLUSIVE');
    expect(codeOf(() => open(file).exec('BEGIN EXCLUSIVE'))).toBe('SQLITE_BUSY');
  });

  it('SQLITE_FULL where the file may not grow, and the transaction is taken back', async () => {
    const database = open(await inFolder());
    database.exec('CREATE TABLE t (a TEXT)');
    database.pragma('max_page_count = 4');
    const put = database.prepare('INSERT INTO t VALUES (?)');
    expect(codeOf(() => database.inTransaction(() => put.run('x'.repeat(100_000))))).toBe('SQLITE_FULL');
    expect(database.prepare('SELECT count(*) AS n FROM t').get()).toEqual({ n: 0 });
    expect(database.inTransaction(() => put.run('x').changes)).toBe(1);
  });

  it('SQLITE_READONLY where it is only looked at, SQLITE_CANTOPEN where it is not there', async () => {
    const file = await inFolder();
    expect(codeOf(() => openSqlite(file, { readOnly: true }))).toBe('SQLITE_CANTOPEN');
    open(file).exec('CREATE TABLE t (a TEXT)');
    const looking = open(file, { readOnly: true });
    expect(codeOf(() => looking.exec("INSERT INTO t VALUES ('x')"))).toBe('SQLITE_READONLY');
    expect(codeOf(() => openSqlite(join(file, 'below')))).toBe('SQLITE_CANTOPEN');
  });

  it('SQLITE_NOTADB where it is another kind of file, SQLITE_ERROR where the question is wrong', async () => {
    const file = await inFolder();
    await writeFile(file, 'Dear Sir, this is not a database. '.repeat(40));
    expect(codeOf(() => open(file).pragma('user_version'))).toBe('SQLITE_NOTADB');
    expect(codeOf(() => open(':memory:').prepare('SELECT * FROM nothing'))).toBe('SQLITE_ERROR');
  });
});
