import { createRequire } from 'node:module';
import { CannotOpen } from '../fault.ts';

/** A row or a bound value, as SQLite has them. */
export type SqliteValue = string | number | bigint | null | Uint8Array;

/** What both drivers do alike; `openSqlite.ts` levels out the rest. */
export type DriverDatabase = {
  exec(sql: string): unknown;
  prepare(sql: string): {
    run(...values: SqliteValue[]): { changes: number | bigint; lastInsertRowid: number | bigint };
    get(...values: SqliteValue[]): unknown;
    all(...values: SqliteValue[]): unknown[];
  };
  close(): void;
};

export type Driver = {
  name: 'node:sqlite' | 'better-sqlite3';
  open(file: string, readOnly: boolean): DriverDatabase;
};

const chosen: { driver?: Driver } = {};

/**
 * The SQLite of this program: the one built into Node where it is (from 22.13 and 24 on), else the package.
 *
 * @throws CannotOpen where there is neither
 */
export function sqliteDriver(): Driver {
  chosen.driver ??= firstOf([builtIn, fromPackage]);
  return chosen.driver;
}

/** The first that is there. @throws CannotOpen with one sentence where none is */
export function firstOf(ways: (() => Driver | undefined)[]): Driver {
  for (const way of ways) {
    const driver = way();
    if (driver !== undefined) return driver;
  }
  throw new CannotOpen(
    'record.no-sqlite',
    `Underside keeps its record with SQLite, which this Node (${process.versions.node}) does not have: install Node 24 from nodejs.org, which has it built in, and start again.`,
  );
}

type BuiltIn = { DatabaseSync: new (file: string, options: { readOnly: boolean }) => DriverDatabase };

function builtIn(): Driver | undefined {
  const sqlite = withoutItsWarning(() => process.getBuiltinModule?.('node:sqlite') as BuiltIn | undefined);
  if (sqlite === undefined) return undefined;
  return { name: 'node:sqlite', open: (file, readOnly) => new sqlite.DatabaseSync(file, { readOnly }) };
}

/** Node 22 and 24 call it an experiment at every start; our suites run over it, and a user has no use for that line. */
function withoutItsWarning<Value>(work: () => Value): Value {
  const { emitWarning } = process;
  process.emitWarning = (warning: string | Error, ...rest: unknown[]) => {
    if (!/SQLite is an experimental feature/.test(String(warning)))
      (emitWarning as (...all: unknown[]) => void).call(process, warning, ...rest);
  };
  try {
    return work();
  } finally {
    process.emitWarning = emitWarning;
  }
}

type FromPackage = new (file: string, options: { readonly: boolean }) => DriverDatabase;

function fromPackage(): Driver | undefined {
  try {
    const Database: FromPackage = createRequire(import.meta.url)('better-sqlite3');
    // The native part is loaded with the first database.
    new Database(':memory:', { readonly: false }).close();
    return { name: 'better-sqlite3', open: (file, readOnly) => new Database(file, { readonly: readOnly }) };
  } catch {
    return undefined;
  }
}
