import type { CompiledNetwork } from './compileNetwork.ts';
import { planElimination } from './plan.ts';
import { type IndexedEvidence, propagate } from './propagate.ts';
import { requestFor } from './question.ts';

/**
 * A set of evidence that can't stand together, with nothing in it that could be left out.
 *
 * Method: take out one item after the other and leave out for good each without which the rest is still impossible.
 * There may be other such sets.
 *
 * @param evidence  evidence that is impossible as a whole
 * @returns the ids of its variables, in the order of the network
 */
export function conflictingEvidence(network: CompiledNetwork, evidence: IndexedEvidence): string[] {
  let kept = [...new Set([...evidence.hard.keys(), ...evidence.soft.keys()])].sort((a, b) => a - b);
  for (const variable of [...kept]) {
    const without = kept.filter((each) => each !== variable);
    if (isImpossible(network, only(evidence, without))) kept = without;
  }
  return kept.map((variable) => network.ids[variable] as string);
}

function isImpossible(network: CompiledNetwork, evidence: IndexedEvidence): boolean {
  return !propagate(planElimination(network, requestFor(evidence, [])), evidence).possible;
}

function only(evidence: IndexedEvidence, variables: readonly number[]): IndexedEvidence {
  const kept = new Set(variables);
  return {
    hard: new Map([...evidence.hard].filter(([variable]) => kept.has(variable))),
    soft: new Map([...evidence.soft].filter(([variable]) => kept.has(variable))),
  };
}
