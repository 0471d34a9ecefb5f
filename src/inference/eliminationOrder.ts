/**
 * In which order to sum variables out so that no table gets large.
 *
 * Method: greedily the variable whose summing makes the smallest table (min-weight); among equals the one that ties
 * the fewest new pairs together (min-fill); then the first listed, so that the order is always the same. A caller's
 * own order comes first.
 *
 * @param scopes  for each table the variables in it
 * @param sizes   number of states of each variable
 * @param first   variables to sum out first, in this order; those that are in no scope are left out
 * @returns every variable that is in some scope, once
 * @source Koller and Friedman, Probabilistic Graphical Models (2009), section 9.4.3: from memory
 */
export function eliminationOrder(
  scopes: readonly (readonly number[])[],
  sizes: readonly number[],
  first: readonly number[] = [],
): number[] {
  const neighbours = neighboursOf(scopes);
  const order: number[] = [];
  for (const variable of first) {
    if (!neighbours.has(variable)) continue;
    order.push(variable);
    takeOut(variable, neighbours);
  }
  const scores = new Map(
    [...neighbours.keys()].sort((a, b) => a - b).map((each) => [each, score(each, neighbours, sizes)]),
  );
  while (neighbours.size > 0) {
    const best = leastOf(scores);
    order.push(best);
    const touched = takeOut(best, neighbours);
    scores.delete(best);
    for (const each of withTheirs(touched, neighbours)) scores.set(each, score(each, neighbours, sizes));
  }
  return order;
}

type Neighbours = Map<number, Set<number>>;
type Score = { logSize: number; newPairs: number };

function neighboursOf(scopes: readonly (readonly number[])[]): Neighbours {
  const neighbours: Neighbours = new Map();
  for (const scope of scopes) {
    for (const variable of scope) {
      const known = neighbours.get(variable) ?? new Set<number>();
      for (const other of scope) if (other !== variable) known.add(other);
      neighbours.set(variable, known);
    }
  }
  return neighbours;
}

/** Ties the neighbours of a variable together, removes it, and returns them. */
function takeOut(variable: number, neighbours: Neighbours): number[] {
  const around = [...(neighbours.get(variable) ?? [])];
  neighbours.delete(variable);
  for (const each of around) {
    const known = neighbours.get(each) as Set<number>;
    known.delete(variable);
    for (const other of around) if (other !== each) known.add(other);
  }
  return around;
}

function score(variable: number, neighbours: Neighbours, sizes: readonly number[]): Score {
  const around = [...(neighbours.get(variable) ?? [])];
  let logSize = Math.log(sizes[variable] as number);
  let newPairs = 0;
  around.forEach((each, place) => {
    logSize += Math.log(sizes[each] as number);
    const known = neighbours.get(each) as Set<number>;
    for (let other = place + 1; other < around.length; other++) {
      if (!known.has(around[other] as number)) newPairs++;
    }
  });
  return { logSize, newPairs };
}

/** Scores hang on pairs two steps away, so the neighbours of those touched are scored anew as well. */
function withTheirs(touched: readonly number[], neighbours: Neighbours): Set<number> {
  const all = new Set(touched);
  for (const each of touched) for (const other of neighbours.get(each) ?? []) all.add(other);
  return all;
}

function leastOf(scores: ReadonlyMap<number, Score>): number {
  let best = -1;
  let least: Score | undefined;
  for (const [variable, each] of scores) {
    const lighter = least === undefined || each.logSize < least.logSize - 1e-12;
    const even = least !== undefined && Math.abs(each.logSize - least.logSize) <= 1e-12;
    if (
      lighter ||
      (even &&
        least !== undefined &&
        (each.newPairs < least.newPairs || (each.newPairs === least.newPairs && variable < best)))
    ) {
      best = variable;
      least = each;
    }
  }
  return best;
}
