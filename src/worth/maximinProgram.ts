import { type Coefficients, type Constraint, solve } from 'yalps';
import { nothing, total } from './exactMoney.ts';
import type { Estate } from './lots.ts';

/** Who gets which lot, and whether nothing better is there. */
export type Maximin = {
  /** For each lot the index of its heir. */
  holder: number[];
  /** False where the search was stopped before it could prove that nothing better is there. */
  proved: boolean;
};

/** Steps of the search for each level, so that it ends: no clock is read. */
const mostSteps = 8000;

/**
 * The highest least share as an integer program, for estates too large to go through.
 *
 * Method: one integer program for each level. The level found is held for all but as many heirs as may lie below it, and the next one is
 * raised. No lot is split and no money passes.
 *
 * @accuracy levels that differ by less than a ten-millionth of the largest total are taken for equal
 * @source the leximin order (Sen, 1970; Moulin, 1988), from memory; the program by YALPS; held against every allocation of small estates
 */
export function maximinProgram(estate: Estate): Maximin {
  const { heirs, lots, values } = estate;
  const largest = values
    .map((row) => total(row))
    .reduce((most, each) => (each.gt(most) ? each : most), nothing);
  if (largest.equals(0)) return { holder: lots.map(() => 0), proved: true };
  const scaled = values.map((row) => row.map((value) => value.div(largest).mul(scale).valueOf()));
  const levels: number[] = [];
  let holder = lots.map(() => 0);
  let proved = true;
  for (let level = 0; level < heirs.length; level++) {
    const found = raised(scaled, levels);
    if (found === undefined) return { holder, proved: false };
    ({ holder } = found);
    proved &&= found.proved;
    const had = heirs
      .map((_, heir) => sumOf(scaled[heir] as number[], holder, heir))
      .toSorted((a, b) => a - b);
    levels.push(had[level] as number);
  }
  return { holder, proved };
}

/** The values are brought to this largest total before they are solved. */
const scale = 1000;
const slack = scale * 1e-7;

function sumOf(row: readonly number[], holder: readonly number[], heir: number): number {
  return row.reduce((sum, value, lot) => (holder[lot] === heir ? sum + value : sum), 0);
}

/** The next level as high as can be, with the levels before it held; undefined where nothing was found in time. */
function raised(values: readonly (readonly number[])[], levels: readonly number[]): Maximin | undefined {
  const constraints = new Map<string, Constraint>();
  const variables = new Map<string, Map<string, number>>();
  const binaries = new Set<string>();
  const put = (variable: string, row: string, coefficient: number) => {
    const column = variables.get(variable) ?? new Map<string, number>();
    variables.set(variable, column.set(row, coefficient));
  };
  const lots = values[0]?.map((_, lot) => lot) ?? [];
  for (const lot of lots) constraints.set(`lot ${lot}`, { equal: 1 });
  const bounds = [...levels, undefined];
  for (const [level, bound] of bounds.entries()) {
    constraints.set(`below ${level}`, { max: level });
    for (const heir of values.keys())
      constraints.set(`heir ${heir} ${level}`, { min: bound === undefined ? 0 : bound - slack });
  }
  for (const [heir, row] of values.entries()) {
    for (const lot of lots) {
      const name = `give ${heir} ${lot}`;
      binaries.add(name);
      put(name, `lot ${lot}`, 1);
      for (const level of bounds.keys()) put(name, `heir ${heir} ${level}`, row[lot] as number);
    }
    for (const level of bounds.keys()) {
      if (level === 0) continue;
      const name = `spare ${heir} ${level}`;
      binaries.add(name);
      put(name, `heir ${heir} ${level}`, 2 * scale);
      put(name, `below ${level}`, 1);
    }
    put('least', `heir ${heir} ${levels.length}`, -1);
  }
  put('least', 'least', 1);
  const model = {
    direction: 'maximize' as const,
    objective: 'least',
    constraints,
    variables: variables as Map<string, Coefficients>,
    binaries,
  };
  const found = solve(model, { maxIterations: mostSteps, timeout: Number.POSITIVE_INFINITY, tolerance: 0 });
  if (!Number.isFinite(found.result)) return undefined;
  const given = new Map(found.variables);
  const holder = lots.map((lot) =>
    Math.max(
      0,
      [...values.keys()].findIndex((heir) => (given.get(`give ${heir} ${lot}`) ?? 0) > 0.5),
    ),
  );
  return { holder, proved: found.status === 'optimal' };
}
