import type { Fault } from '../ground/fault.ts';
import type { Evidence, Network, Variable } from './network.ts';

/**
 * Does this evidence speak of the network's variables and their states?
 *
 * @returns every fault found, with paths `evidence.ID` and `soft.ID`
 */
export function checkEvidence(network: Network, evidence: Evidence): Fault[] {
  const byId = new Map(network.variables.map((variable) => [variable.id, variable]));
  const hard = Object.entries(evidence.hard ?? {}).flatMap(([id, state]) =>
    checkHard(byId.get(id), id, state),
  );
  const soft = Object.entries(evidence.soft ?? {}).flatMap(([id, values]) =>
    checkSoft(byId.get(id), id, values),
  );
  return [...hard, ...soft];
}

/**
 * Are these ids variables of the network, each asked for once?
 *
 * @param path  the field the ids stand in, for the faults
 */
export function checkAsked(network: Network, asked: readonly string[], path: string): Fault[] {
  const known = new Set(network.variables.map((variable) => variable.id));
  return asked.flatMap((id, index) => (known.has(id) ? [] : [unknownVariable(id, `${path}[${index}]`)]));
}

function checkHard(variable: Variable | undefined, id: string, state: string): Fault[] {
  const path = `evidence.${id}`;
  if (!variable) return [unknownVariable(id, path)];
  if (variable.states.includes(state)) return [];
  const message = `“${id}” has no state “${state}”: write one of ${variable.states.join(', ')}.`;
  return [{ code: 'inference.unknown-state', path, message }];
}

function checkSoft(variable: Variable | undefined, id: string, values: readonly number[]): Fault[] {
  const path = `soft.${id}`;
  if (!variable) return [unknownVariable(id, path)];
  const wanted = variable.states.length;
  if (values.length !== wanted) {
    const message = `“${id}” has ${wanted} states: give ${wanted} likelihoods, one for each; there are ${values.length}.`;
    return [{ code: 'inference.soft-length', path, message }];
  }
  if (values.some((value) => !(value >= 0 && Number.isFinite(value)))) {
    return [
      {
        code: 'inference.soft-value',
        path,
        message: `A likelihood of “${id}” is below 0 or no number: write numbers from 0 up.`,
      },
    ];
  }
  return [];
}

function unknownVariable(id: string, path: string): Fault {
  return {
    code: 'inference.unknown-variable',
    path,
    message: `“${id}” is not among the variables: add it there, or mend the name.`,
  };
}
