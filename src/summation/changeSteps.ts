import type { ModelPart } from '../evidence/preparedCase.ts';
import type { Alteration } from '../knowledge/schema.ts';
import { subsetsOf } from './groupPlan.ts';
import type { ChangeSteps } from './layout.ts';
import { allowedAt, type Layout, levels } from './layout.ts';

/** The steps of one alteration at a level. */
export function stepsOf(
  { steps }: { steps: readonly (readonly ChangeSteps[])[] },
  k: number,
  a: number,
): ChangeSteps {
  return (steps[k] as readonly ChangeSteps[])[a] as ChangeSteps;
}

/** The steps of the alterations of a clique, by level and alteration; where it is not allowed it changes nothing. */
export function changeSteps(
  layout: Pick<Layout, 'changeShares'>,
  alterations: readonly Alteration[],
  masks: readonly number[],
  parts: readonly ModelPart[],
): ChangeSteps[][] {
  const allowed = levels.map((_, k) => alterations.map((each) => allowedAt(each, k)));
  const known = new Map<string, ChangeSteps[]>();
  return allowed.map((here) => {
    const name = here.join();
    const before = known.get(name);
    if (before !== undefined) return before;
    let reached = 0;
    const made = alterations.map((alteration, a) => {
      const mask = masks[a] as number;
      const shares = parts.map((part) => layout.changeShares[alteration.id]?.[part.kind] ?? 0);
      const steps = stepsFrom(reached, here[a] === true ? mask : 0, here[a] === true, shares);
      if (here[a] === true) reached |= mask;
      return steps;
    });
    known.set(name, made);
    return made;
  });
}

function stepsFrom(reached: number, mask: number, allowed: boolean, shares: readonly number[]): ChangeSteps {
  const [from, changed, ifHappened]: [number[], number[], number[]] = [[], [], []];
  const weights = setWeights(mask, shares);
  for (const start of subsetsOf(reached)) {
    const free = mask & ~start;
    const ofFree = weights.get(free) as Float64Array;
    subsetsOf(free).forEach((set, index) => {
      from.push(start);
      changed.push(set);
      ifHappened.push(allowed ? (ofFree[index] as number) : 0);
    });
  }
  return {
    from: Int32Array.from(from),
    changed: Int32Array.from(changed),
    ifHappened: Float64Array.from(ifHappened),
  };
}

/** For every subset `free` of a mask: the weights of its own subsets in rising order, none first. */
function setWeights(mask: number, shares: readonly number[]): Map<number, Float64Array> {
  const known = new Map<number, Float64Array>([[0, Float64Array.of(1)]]);
  for (let free = (0 - mask) & mask; free !== 0; free = (free - mask) & mask) {
    const top = 31 - Math.clz32(free);
    const below = known.get(free & ~(1 << top)) as Float64Array;
    const share = shares[top] as number;
    const all = new Float64Array(below.length * 2);
    for (let i = 0; i < below.length; i++) {
      all[i] = (below[i] as number) * (1 - share);
      all[below.length + i] = (below[i] as number) * share;
    }
    known.set(free, all);
  }
  return known;
}
