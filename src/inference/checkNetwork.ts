import type { Fault } from '../ground/fault.ts';
import { sum } from '../ground/statistics.ts';
import { findCycle } from './findCycle.ts';
import type { Network, Table, Variable } from './network.ts';

/** How far a row may be from summing to 1. */
const rowTolerance = 1e-9;

/**
 * Is this a network that can be reckoned with?
 *
 * @returns every fault found, empty where there is none; paths are those of the network's own fields
 */
export function checkNetwork(network: Network): Fault[] {
  const variables = checkVariables(network.variables);
  const byId = new Map(network.variables.map((variable) => [variable.id, variable]));
  const tables = network.tables.flatMap((table, index) => checkTable(table, index, byId));
  const cover = checkCover(network);
  const faults = [...variables, ...tables, ...cover];
  return faults.length > 0 ? faults : checkCycle(network);
}

function checkVariables(variables: readonly Variable[]): Fault[] {
  const seen = new Set<string>();
  return variables.flatMap((variable, index) => {
    const faults: Fault[] = [];
    const path = `variables[${index}]`;
    if (seen.has(variable.id)) {
      faults.push(
        fault(
          'variable-twice',
          `${path}.id`,
          `“${variable.id}” is listed twice: give each variable its own id.`,
        ),
      );
    }
    seen.add(variable.id);
    if (variable.states.length === 0) {
      faults.push(fault('no-states', `${path}.states`, `“${variable.id}” has no states: list at least one.`));
    }
    if (new Set(variable.states).size < variable.states.length) {
      faults.push(
        fault('state-twice', `${path}.states`, `“${variable.id}” lists a state twice: name each state once.`),
      );
    }
    return faults;
  });
}

function checkTable(table: Table, index: number, byId: ReadonlyMap<string, Variable>): Fault[] {
  const path = `tables[${index}]`;
  const own = byId.get(table.variable);
  if (!own) {
    return [
      fault(
        'unknown-variable',
        `${path}.variable`,
        `“${table.variable}” is not among the variables: add it there, or mend the name.`,
      ),
    ];
  }
  const faults = table.given.flatMap((id, place) => {
    const at = `${path}.given[${place}]`;
    if (!byId.has(id))
      return [
        fault('unknown-variable', at, `“${id}” is not among the variables: add it there, or mend the name.`),
      ];
    if (id === table.variable)
      return [fault('given-itself', at, `“${id}” can’t be given itself: take it out of its own table.`)];
    if (table.given.indexOf(id) < place)
      return [fault('given-twice', at, `“${id}” is given twice: name it once.`)];
    return [];
  });
  if (faults.length > 0) return faults;
  const rowsWanted = table.given.reduce((count, id) => count * (byId.get(id)?.states.length ?? 1), 1);
  if (table.rows.length !== rowsWanted) {
    const message = `The table of “${table.variable}” needs ${rowsWanted} rows, one for each way its givens can stand; it has ${table.rows.length}.`;
    return [fault('wrong-rows', `${path}.rows`, message)];
  }
  return table.rows.flatMap((row, place) =>
    checkRow(table.variable, own.states.length, row, `${path}.rows[${place}]`),
  );
}

function checkRow(id: string, statesWanted: number, row: readonly number[], path: string): Fault[] {
  if (row.length !== statesWanted) {
    return [
      fault(
        'wrong-row-length',
        path,
        `A row of “${id}” needs ${statesWanted} probabilities, one for each state; this one has ${row.length}.`,
      ),
    ];
  }
  if (row.some((value) => !(value >= 0 && value <= 1 + rowTolerance))) {
    return [
      fault(
        'not-a-probability',
        path,
        `A row of “${id}” holds a number outside 0 to 1: write probabilities.`,
      ),
    ];
  }
  const total = sum(row);
  if (Math.abs(total - 1) > rowTolerance) {
    return [
      fault('row-sum', path, `A row of “${id}” sums to ${Number(total.toPrecision(12))}: make it sum to 1.`),
    ];
  }
  return [];
}

function checkCover(network: Network): Fault[] {
  const counts = new Map<string, number>();
  for (const table of network.tables) counts.set(table.variable, (counts.get(table.variable) ?? 0) + 1);
  return [...new Set(network.variables.map((variable) => variable.id))].flatMap((id) => {
    const count = counts.get(id) ?? 0;
    if (count === 0) return [fault('no-table', 'tables', `“${id}” has no table: give it one.`)];
    if (count > 1) return [fault('table-twice', 'tables', `“${id}” has ${count} tables: keep one.`)];
    return [];
  });
}

function checkCycle(network: Network): Fault[] {
  const cycle = findCycle(new Map(network.tables.map((table) => [table.variable, table.given])));
  if (!cycle) return [];
  return [
    fault(
      'cycle',
      'tables',
      `These follow from each other in a ring: ${cycle.join(' → ')}. Take one link out.`,
    ),
  ];
}

function fault(what: string, path: string, message: string): Fault {
  return { code: `inference.${what}`, path, message };
}
