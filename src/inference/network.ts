/** One unknown of a network and the states it can be in. */
export type Variable = { id: string; states: readonly string[] };

/**
 * How probable each state of a variable is, given the states of others.
 *
 * `rows` are in row-major order of the given variables' states: the first given varies slowest. Each row has one
 * probability for each state of `variable`. With nothing given there is one row.
 */
export type Table = { variable: string; given: readonly string[]; rows: readonly (readonly number[])[] };

/** Unknowns and one table for each. */
export type Network = { variables: readonly Variable[]; tables: readonly Table[] };

/** What is known: the state of a variable, or how likely the observation would be in each of its states. */
export type Evidence = {
  hard?: Readonly<Record<string, string>>;
  soft?: Readonly<Record<string, readonly number[]>>;
};
