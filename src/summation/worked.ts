/**
 * What has been worked out already, each thing once: the one owner of everything that is kept between two questions. Tables are
 * told apart by name, each with a kind of key and of value; all of them go with what they were worked out of.
 */
export class Worked<Tables extends Record<string, readonly [key: unknown, value: unknown]>> {
  #tables = new Map<keyof Tables, Map<unknown, unknown>>();
  #before: ReadonlyMap<keyof Tables, ReadonlyMap<unknown, unknown>> = new Map();

  /** What was kept in a table under a key. */
  known<Name extends keyof Tables>(table: Name, key: Tables[Name][0]): Tables[Name][1] | undefined {
    const known = this.#tables.get(table)?.get(key);
    if (known !== undefined) return known;
    const before = this.#before.get(table)?.get(key);
    return before === undefined ? undefined : this.keep(table, key, before);
  }

  /** Keeps a value, and hands it back. */
  keep<Name extends keyof Tables>(
    table: Name,
    key: Tables[Name][0],
    value: Tables[Name][1],
  ): Tables[Name][1] {
    const kept = this.#tables.get(table) ?? new Map();
    this.#tables.set(table, kept.set(key, value));
    return value;
  }

  /** What is kept under a key, worked out now where it was not asked for before. */
  once<Name extends keyof Tables>(
    table: Name,
    key: Tables[Name][0],
    make: () => Tables[Name][1],
  ): Tables[Name][1] {
    const known = this.known(table, key);
    return known === undefined ? this.keep(table, key, make()) : known;
  }

  /** Begins a time of its own: what is not asked for until the next one begins is dropped then. */
  turn(): void {
    this.#before = this.#tables;
    this.#tables = new Map();
  }
}

/** What is kept in a table whose kind of value only the one file knows that names it; worked out now where it was not asked for before. */
export function onceIn<Value>(
  worked: Worked<Record<string, readonly [string, unknown]>>,
  table: string,
  key: string,
  make: () => Value,
): Value {
  return worked.once(table, key, make) as Value;
}
