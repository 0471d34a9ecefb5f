/**
 * What has been worked out already, each thing once: the one owner of everything that is kept between two questions. Tables are
 * told apart by name, each with a kind of key and of value; all of them go with what they were worked out of.
 */
export class Worked<Tables extends Record<string, readonly [key: unknown, value: unknown]>> {
  readonly #tables = new Map<keyof Tables, Map<unknown, unknown>>();

  /** What was kept in a table under a key. */
  known<Name extends keyof Tables>(table: Name, key: Tables[Name][0]): Tables[Name][1] | undefined {
    return this.#tables.get(table)?.get(key);
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
}
