import type { Network } from './network.ts';

/** A table as numbers in a row: the scope's first variable varies slowest, the table's own variable fastest. */
export type CompiledTable = {
  variable: number;
  scope: readonly number[];
  strides: readonly number[];
  values: Float64Array;
};

/** A network with indices for names, ready to be reckoned with many times. */
export type CompiledNetwork = {
  ids: readonly string[];
  states: readonly (readonly string[])[];
  sizes: readonly number[];
  indexById: ReadonlyMap<string, number>;
  /** One for each variable, in the order of the variables. */
  tables: readonly CompiledTable[];
};

/**
 * A network made ready for reckoning.
 *
 * @param network  one in which `checkNetwork` finds no fault
 * @throws RangeError if a variable has no table or a table names an unknown variable (check first)
 */
export function compileNetwork(network: Network): CompiledNetwork {
  const ids = network.variables.map((variable) => variable.id);
  const indexById = new Map(ids.map((id, index) => [id, index]));
  const sizes = network.variables.map((variable) => variable.states.length);
  const tableById = new Map(network.tables.map((table) => [table.variable, table]));
  const tables = ids.map((id, variable) => {
    const table = tableById.get(id);
    if (!table) throw new RangeError(`compileNetwork needs a table for every variable, got none for “${id}”`);
    const scope = [...table.given, id].map((each) => requireIndex(indexById, each));
    return {
      variable,
      scope,
      strides: stridesOf(scope, sizes),
      values: new Float64Array(table.rows.flat()),
    };
  });
  return { ids, states: network.variables.map((variable) => variable.states), sizes, indexById, tables };
}

/** How far apart neighbouring states of each variable of the scope lie in a table in row-major order. */
export function stridesOf(scope: readonly number[], sizes: readonly number[]): number[] {
  const strides: number[] = new Array(scope.length);
  let stride = 1;
  for (let place = scope.length - 1; place >= 0; place--) {
    strides[place] = stride;
    stride *= sizes[scope[place] as number] as number;
  }
  return strides;
}

/** The index of a variable. @throws RangeError if the id is not known */
export function requireIndex(indexById: ReadonlyMap<string, number>, id: string): number {
  const index = indexById.get(id);
  if (index === undefined) throw new RangeError(`a variable of the network was needed, got “${id}”`);
  return index;
}
