import type { Arithmetic } from './arithmetic.ts';
import type { CompiledTable } from './compileNetwork.ts';
import { logArithmetic } from './logArithmetic.ts';
import { plainArithmetic } from './plainArithmetic.ts';
import type { Clique, Plan } from './plan.ts';

/** Evidence by index: a state for each observed variable of the plan, and likelihoods for any others. */
export type IndexedEvidence = {
  hard: ReadonlyMap<number, number>;
  soft: ReadonlyMap<number, readonly number[]>;
};

/** What came of an elimination. `marginal` answers for any variable the plan sums out. */
export type Propagation =
  | { possible: false }
  | {
      possible: true;
      /** Natural log of the probability of the evidence, soft evidence taken as it stands. */
      logEvidence: number;
      /** Which way of reckoning was needed. */
      arithmetic: 'plain' | 'log';
      marginal: (variable: number) => number[];
    };

/**
 * Runs an elimination for given evidence.
 *
 * Method: messages run from the first clique to the last; what they leave is the probability of the evidence. Marginals
 * come from the way back, along the cliques that lead to the variable only. Plain numbers first; if any product leaves
 * the range that can be held, all is done again in logarithms.
 *
 * @param evidence  must give a state for exactly the plan's observed variables
 */
export function propagate(plan: Plan, evidence: IndexedEvidence): Propagation {
  return (
    sweep(plan, evidence, plainArithmetic, 'plain') ??
    (sweep(plan, evidence, logArithmetic, 'log') as Propagation)
  );
}

/** One way of reckoning; undefined if numbers were lost on the way. Given its own name so that both can be compared. */
export function sweep(
  plan: Plan,
  evidence: IndexedEvidence,
  arithmetic: Arithmetic,
  name: 'plain' | 'log',
): Propagation | undefined {
  let logEvidence = settledLog(plan, evidence);
  const potentials: Float64Array[] = [];
  const messages: Float64Array[] = [];
  for (const clique of plan.cliques) {
    const entries = arithmetic.fresh(clique.length);
    let lost = false;
    const settle = (settled: Float64Array) => {
      logEvidence += arithmetic.settle(settled);
    };
    for (const group of clique.groups) {
      const product = arithmetic.fresh(group.length);
      for (const { table, offsets } of group.tables) {
        lost = arithmetic.takeTable(product, table.values, offsets, baseOf(table, evidence)) || lost;
        settle(product);
      }
      lost = arithmetic.takeMessage(entries, product, group.offsets) || lost;
      settle(entries);
    }
    const likelihoods = evidence.soft.get(clique.variable);
    if (likelihoods) {
      lost = arithmetic.takeTable(entries, likelihoods, clique.states, 0) || lost;
      settle(entries);
    }
    for (const { clique: from, offsets } of clique.incoming) {
      lost = arithmetic.takeMessage(entries, messages[from] as Float64Array, offsets) || lost;
      settle(entries);
    }
    if (lost) return undefined;
    const message = arithmetic.sum(entries, clique.separatorOffsets, clique.separatorLength);
    logEvidence += arithmetic.settle(message);
    if (logEvidence === Number.NEGATIVE_INFINITY) return { possible: false };
    potentials.push(entries);
    messages.push(message);
  }
  if (logEvidence === Number.NEGATIVE_INFINITY) return { possible: false };
  return {
    possible: true,
    logEvidence,
    arithmetic: name,
    marginal: wayBack(plan, arithmetic, potentials, messages),
  };
}

function wayBack(
  plan: Plan,
  arithmetic: Arithmetic,
  potentials: readonly Float64Array[],
  messages: readonly Float64Array[],
): (variable: number) => number[] {
  const beliefs = new Map<number, Float64Array>();
  const beliefAt = (at: number): Float64Array => {
    const known = beliefs.get(at);
    if (known) return known;
    const clique = plan.cliques[at] as Clique;
    const entries = (potentials[at] as Float64Array).slice();
    if (clique.outgoing >= 0) {
      const taker = plan.cliques[clique.outgoing] as Clique;
      const incoming = taker.incoming.find((each) => each.clique === at) as Clique['incoming'][number];
      const around = arithmetic.sum(beliefAt(clique.outgoing), incoming.offsets, clique.separatorLength);
      arithmetic.settle(around);
      arithmetic.takeMessage(
        entries,
        arithmetic.divide(around, messages[at] as Float64Array),
        clique.separatorOffsets,
      );
      arithmetic.settle(entries);
    }
    beliefs.set(at, entries);
    return entries;
  };
  return (variable) => {
    const at = plan.cliqueOf.get(variable);
    if (at === undefined)
      throw new RangeError(`marginal needs a variable the plan sums out, got index ${variable}`);
    const clique = plan.cliques[at] as Clique;
    return arithmetic.shares(
      arithmetic.sum(beliefAt(at), clique.states, plan.network.sizes[variable] as number),
    );
  };
}

/** Where a table's entries begin once its observed variables stand. */
function baseOf(table: CompiledTable, evidence: IndexedEvidence): number {
  return table.scope.reduce(
    (base, variable, place) => base + (evidence.hard.get(variable) ?? 0) * (table.strides[place] as number),
    0,
  );
}

/** Tables with nothing open, and likelihoods of variables whose state is given. */
function settledLog(plan: Plan, evidence: IndexedEvidence): number {
  let log = 0;
  for (const table of plan.settled) log += Math.log(table.values[baseOf(table, evidence)] as number);
  for (const [variable, likelihoods] of evidence.soft) {
    const state = evidence.hard.get(variable);
    if (state !== undefined) log += Math.log(likelihoods[state] as number);
  }
  return log;
}
