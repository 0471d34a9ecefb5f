import type { Evidence, Network } from '../../src/inference/network.ts';

/**
 * Posteriors by adding up every whole state of affairs: slow, and with nothing in common with the elimination but
 * the definition. For networks small enough to list.
 */
export function bruteForce(
  network: Network,
  evidence: Evidence = {},
): { total: number; shares: Record<string, Record<string, number>> } {
  const tables = new Map(network.tables.map((table) => [table.variable, table]));
  const sizes = new Map(network.variables.map((variable) => [variable.id, variable.states.length]));
  const sums = new Map(network.variables.map((variable) => [variable.id, variable.states.map(() => 0)]));
  let total = 0;
  const at = new Map<string, number>();

  const visit = (place: number): void => {
    const variable = network.variables[place];
    if (variable) {
      for (let state = 0; state < variable.states.length; state++) {
        at.set(variable.id, state);
        visit(place + 1);
      }
      return;
    }
    let weight = 1;
    for (const { id, states } of network.variables) {
      const state = at.get(id) as number;
      const table = tables.get(id);
      if (!table) throw new RangeError(`no table for ${id}`);
      const row = table.given.reduce(
        (index, each) => index * (sizes.get(each) as number) + (at.get(each) as number),
        0,
      );
      weight *= table.rows[row]?.[state] as number;
      const given = evidence.hard?.[id];
      if (given !== undefined && states[state] !== given) weight = 0;
      weight *= evidence.soft?.[id]?.[state] ?? 1;
    }
    total += weight;
    for (const [id, list] of sums)
      list[at.get(id) as number] = (list[at.get(id) as number] as number) + weight;
  };
  visit(0);

  const shares = network.variables.map(({ id, states }) => [
    id,
    Object.fromEntries(states.map((state, index) => [state, (sums.get(id)?.[index] as number) / total])),
  ]);
  return { total, shares: Object.fromEntries(shares) };
}
