import { type CompiledNetwork, type CompiledTable, stridesOf } from './compileNetwork.ts';
import { eliminationOrder } from './eliminationOrder.ts';

/** A table's share in a group: for each entry of the group, where in the table its number stands. */
export type TableUse = { table: CompiledTable; offsets: Int32Array };

/**
 * Tables over the same open variables: multiplied with each other first, while they are small, then into the clique.
 * Many findings that hang on one unknown cost little that way.
 */
export type TableGroup = { length: number; tables: TableUse[]; offsets: Int32Array };

/**
 * One step of elimination: the product of its tables and of the messages of earlier cliques, from which `variable`
 * is summed out, leaving a message over the separator for a later clique.
 */
export type Clique = {
  variable: number;
  /** The variable summed out comes first. */
  scope: readonly number[];
  length: number;
  groups: TableGroup[];
  /** Variables of the scope that may carry soft evidence here, with their state for each entry. */
  states: Int32Array;
  /** Earlier cliques whose message comes in, with where in the message each entry reads. */
  incoming: { clique: number; offsets: Int32Array }[];
  /** The clique that takes this one's message, −1 for none. */
  outgoing: number;
  separatorLength: number;
  separatorOffsets: Int32Array;
};

/** An elimination laid out once, to be run for any states of the observed variables. */
export type Plan = {
  network: CompiledNetwork;
  observed: readonly number[];
  order: readonly number[];
  cliques: readonly Clique[];
  /** Tables in which every variable is observed: one number each. */
  settled: readonly CompiledTable[];
  /** For each variable summed out, its clique. */
  cliqueOf: ReadonlyMap<number, number>;
};

export type PlanRequest = {
  /** Variables whose state will be given. */
  observed: readonly number[];
  /** Variables that are asked for or carry soft evidence; what neither they nor the observed follow from is left out. */
  wanted: readonly number[];
  /** Variables to sum out first, in this order. */
  first?: readonly number[];
};

/**
 * Lays out an elimination: which variables matter, in which order they go, and where each number is read.
 *
 * Method: barren variables (with no observed or wanted one among what follows from them) sum to 1 and are left out;
 * the rest are eliminated bucket by bucket, the buckets forming a tree along which messages run there and back.
 *
 * @source Dechter, Bucket elimination (1999); Koller and Friedman (2009), chapters 9 and 10: from memory
 */
export function planElimination(network: CompiledNetwork, request: PlanRequest): Plan {
  const observed = new Set(request.observed);
  const tables = withAncestors(network, [...request.observed, ...request.wanted]).map(
    (each) => network.tables[each] as CompiledTable,
  );
  const open = tables.map((table) => table.scope.filter((each) => !observed.has(each)));
  const order = eliminationOrder(
    open.filter((scope) => scope.length > 0),
    network.sizes,
    request.first ?? [],
  );
  const place = new Map(order.map((variable, index) => [variable, index]));
  const cliques = cliquesOf(network, order, place, tables, open);
  const settled = tables.filter((_, index) => open[index]?.length === 0);
  return { network, observed: [...observed], order, cliques, settled, cliqueOf: place };
}

/** How many numbers the largest table of a plan would hold, without laying it out. */
export function largestTable(network: CompiledNetwork, request: PlanRequest): number {
  const observed = new Set(request.observed);
  const open = withAncestors(network, [...request.observed, ...request.wanted])
    .map((each) =>
      (network.tables[each] as CompiledTable).scope.filter((variable) => !observed.has(variable)),
    )
    .filter((scope) => scope.length > 0);
  const order = eliminationOrder(open, network.sizes, request.first ?? []);
  return Math.max(1, ...scopesAlong(order, open).map((scope) => lengthOf(scope, network.sizes)));
}

function withAncestors(network: CompiledNetwork, variables: readonly number[]): number[] {
  const reached = new Set<number>();
  const waiting = [...variables];
  for (let variable = waiting.pop(); variable !== undefined; variable = waiting.pop()) {
    if (reached.has(variable)) continue;
    reached.add(variable);
    waiting.push(...(network.tables[variable] as CompiledTable).scope);
  }
  return [...reached].sort((a, b) => a - b);
}

/** The scope of each elimination step, the variable summed out first, the others by their turn. */
function scopesAlong(order: readonly number[], open: readonly (readonly number[])[]): number[][] {
  const place = new Map(order.map((variable, index) => [variable, index]));
  const gathered = order.map(() => new Set<number>());
  for (const scope of open) {
    const earliest = Math.min(...scope.map((each) => place.get(each) as number));
    for (const each of scope) gathered[earliest]?.add(each);
  }
  return order.map((variable, step) => {
    const others = [...(gathered[step] as Set<number>)].filter((each) => each !== variable);
    others.sort((a, b) => (place.get(a) as number) - (place.get(b) as number));
    const next = others[0];
    if (next !== undefined) for (const each of others) gathered[place.get(next) as number]?.add(each);
    return [variable, ...others];
  });
}

function cliquesOf(
  network: CompiledNetwork,
  order: readonly number[],
  place: ReadonlyMap<number, number>,
  tables: readonly CompiledTable[],
  open: readonly (readonly number[])[],
): Clique[] {
  const scopes = scopesAlong(
    order,
    open.filter((scope) => scope.length > 0),
  );
  const { sizes } = network;
  const cliques = scopes.map((scope): Clique => {
    const separator = scope.slice(1);
    const own = [scope[0] as number];
    return {
      variable: scope[0] as number,
      scope,
      length: lengthOf(scope, sizes),
      groups: [],
      states: offsetsOf(scope, sizes, own, [1]),
      incoming: [],
      outgoing: separator.length === 0 ? -1 : (place.get(separator[0] as number) as number),
      separatorLength: lengthOf(separator, sizes),
      separatorOffsets: offsetsOf(scope, sizes, separator, stridesOf(separator, sizes)),
    };
  });
  for (const { scope, tables: alike } of groupsOf(tables, open, place)) {
    const clique = cliques[place.get(scope[0] as number) as number] as Clique;
    clique.groups.push({
      length: lengthOf(scope, sizes),
      tables: alike.map((table) => ({ table, offsets: offsetsOf(scope, sizes, table.scope, table.strides) })),
      offsets: offsetsOf(clique.scope, sizes, scope, stridesOf(scope, sizes)),
    });
  }
  cliques.forEach((clique, index) => {
    if (clique.outgoing < 0) return;
    const taker = cliques[clique.outgoing] as Clique;
    const separator = clique.scope.slice(1);
    taker.incoming.push({
      clique: index,
      offsets: offsetsOf(taker.scope, sizes, separator, stridesOf(separator, sizes)),
    });
  });
  return cliques;
}

/** Tables by their open variables, the variable that is summed out first in front. */
function groupsOf(
  tables: readonly CompiledTable[],
  open: readonly (readonly number[])[],
  place: ReadonlyMap<number, number>,
): { scope: number[]; tables: CompiledTable[] }[] {
  const groups = new Map<string, { scope: number[]; tables: CompiledTable[] }>();
  tables.forEach((table, index) => {
    const scope = [...(open[index] as readonly number[])].sort(
      (a, b) => (place.get(a) as number) - (place.get(b) as number),
    );
    if (scope.length === 0) return;
    const group = groups.get(scope.join()) ?? { scope, tables: [] };
    group.tables.push(table);
    groups.set(scope.join(), group);
  });
  return [...groups.values()];
}

function lengthOf(scope: readonly number[], sizes: readonly number[]): number {
  return scope.reduce((length, each) => length * (sizes[each] as number), 1);
}

/** For each entry of a table over `scope` in row-major order, where the same states stand in another table. */
function offsetsOf(
  scope: readonly number[],
  sizes: readonly number[],
  otherScope: readonly number[],
  otherStrides: readonly number[],
): Int32Array {
  const steps = scope.map((each) => otherStrides[otherScope.indexOf(each)] ?? 0);
  const offsets = new Int32Array(lengthOf(scope, sizes));
  let filled = 1;
  for (let axis = scope.length - 1; axis >= 0; axis--) {
    const size = sizes[scope[axis] as number] as number;
    const step = steps[axis] as number;
    for (let state = 1; state < size; state++) {
      for (let entry = 0; entry < filled; entry++)
        offsets[state * filled + entry] = (offsets[entry] as number) + state * step;
    }
    filled *= size;
  }
  return offsets;
}
