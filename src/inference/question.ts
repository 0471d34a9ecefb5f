import type { Fault } from '../ground/fault.ts';
import { checkAsked, checkEvidence } from './checkEvidence.ts';
import { checkNetwork } from './checkNetwork.ts';
import { type CompiledNetwork, compileNetwork, requireIndex } from './compileNetwork.ts';
import type { Evidence, Network } from './network.ts';
import { largestTable, type PlanRequest } from './plan.ts';
import type { IndexedEvidence } from './propagate.ts';

/** A network and a question about it, checked and turned into indices. */
export type Question =
  | {
      ok: true;
      network: CompiledNetwork;
      evidence: IndexedEvidence;
      asked: readonly number[];
      first: readonly number[];
    }
  | { ok: false; faults: Fault[] };

/** The largest table that is laid out: 128 MB of numbers. */
const mostEntries = 2 ** 24;

/**
 * Checks a network and what is asked of it, and makes both ready for reckoning.
 *
 * @param asked  fields of the input that name variables, for the paths of faults
 * @param order  variables to sum out first
 */
export function question(
  network: Network,
  evidence: Evidence,
  asked: Readonly<Record<string, readonly string[]>>,
  order: readonly string[] = [],
): Question {
  const shape = checkNetwork(network);
  if (shape.length > 0) return { ok: false, faults: shape };
  const faults = [
    ...checkEvidence(network, evidence),
    ...Object.entries(asked).flatMap(([path, ids]) => checkAsked(network, ids, path)),
    ...checkAsked(network, order, 'order'),
  ];
  if (faults.length > 0) return { ok: false, faults };
  const compiled = compileNetwork(network);
  const index = (id: string) => requireIndex(compiled.indexById, id);
  const indexed = indexEvidence(compiled, evidence);
  const all = [...new Set(Object.values(asked).flat())].map(index);
  const first = [...new Set(order)].map(index);
  const size = largestTable(compiled, { ...requestFor(indexed, all), first });
  if (size > mostEntries) return { ok: false, faults: [tooLarge(size)] };
  return { ok: true, network: compiled, evidence: indexed, asked: all, first };
}

/** What a plan must allow for, given evidence and what is asked. */
export function requestFor(evidence: IndexedEvidence, asked: readonly number[]): PlanRequest {
  return { observed: [...evidence.hard.keys()], wanted: [...evidence.soft.keys(), ...asked] };
}

/** Evidence by index. @throws RangeError if it names a variable or state that is not there (check first) */
export function indexEvidence(network: CompiledNetwork, evidence: Evidence): IndexedEvidence {
  const index = (id: string) => requireIndex(network.indexById, id);
  const hard = Object.entries(evidence.hard ?? {}).map(([id, state]): [number, number] => {
    const at = network.states[index(id)]?.indexOf(state) ?? -1;
    if (at < 0) throw new RangeError(`a state of “${id}” was needed, got “${state}”`);
    return [index(id), at];
  });
  const soft = Object.entries(evidence.soft ?? {}).map(([id, values]): [number, readonly number[]] => [
    index(id),
    values,
  ]);
  return { hard: new Map(hard), soft: new Map(soft) };
}

function tooLarge(size: number): Fault {
  const message = `These variables hang together too closely: a table of ${size.toExponential(1)} numbers would be needed. Give fewer givens to a table, or fewer states.`;
  return { code: 'inference.too-large', path: 'tables', message };
}
