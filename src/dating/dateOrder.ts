/** Steps of which some are known to have come before others. */
export type StepOrder = {
  /** The names, those that can have come first to begin with, else as they were given. */
  steps: string[];
  /** How many steps must have gone before each, along the longest way. */
  level: Map<string, number>;
  /** Pairs that follow from others, and those that are left without them. */
  redundant: [string, string][];
  reduced: [string, string][];
  /** Pairs of which neither is known to have come first. */
  unordered: [string, string][];
  /** How many steps stand on the longest way. */
  longestChain: number;
  /** In how many orders it can all have happened; undefined beyond `mostCounted` steps. */
  orders: number | undefined;
  /** What must have come before what, also through others. */
  before: (one: string, other: string) => boolean;
};

/** Orders are counted by the sets of steps that can be done first, of which there are 2ⁿ. */
const mostCounted = 16;

/**
 * In what order things were done, by pairs of which the first came before the second.
 *
 * Method: the transitive closure; a pair is redundant where a third step lies between its two. Steps that come before
 * each other can’t be ordered: they come back as loops.
 *
 * @param pairs  [earlier, later]
 * @param more   names that stand in no pair
 * @source E. C. Harris, Principles of Archaeological Stratigraphy (2nd ed. 1989), from memory; counting by subsets: common practice
 */
export function stepOrder(
  pairs: readonly (readonly [string, string])[],
  more: readonly string[] = [],
): { loops: string[][] } | StepOrder {
  const names = [...new Set([...pairs.flat(), ...more])];
  const after = closure(names, pairs);
  const before = (one: string, other: string) => after.get(one)?.has(other) === true;
  const loops = loopsAmong(names, before);
  if (loops.length > 0) return { loops };
  const distinct = [...new Map(pairs.map((pair) => [JSON.stringify(pair), pair])).values()];
  const between = ([one, other]: readonly [string, string]) =>
    names.some((each) => before(one, each) && before(each, other));
  const copy = ([one, other]: readonly [string, string]): [string, string] => [one, other];
  const level = new Map<string, number>();
  for (const name of [...names].sort((a, b) => countBefore(names, before, a) - countBefore(names, before, b)))
    level.set(
      name,
      Math.max(-1, ...names.filter((each) => before(each, name)).map((each) => level.get(each) as number)) +
        1,
    );
  return {
    steps: [...names].sort((a, b) => (level.get(a) as number) - (level.get(b) as number)),
    level,
    redundant: distinct.filter(between).map(copy),
    reduced: distinct.filter((pair) => !between(pair)).map(copy),
    unordered: names.flatMap((one, at) =>
      names
        .slice(at + 1)
        .filter((other) => !before(one, other) && !before(other, one))
        .map((other): [string, string] => [one, other]),
    ),
    longestChain: Math.max(0, ...level.values()) + (names.length > 0 ? 1 : 0),
    orders: names.length <= mostCounted ? countOrders(names, before) : undefined,
    before,
  };
}

function closure(names: readonly string[], pairs: readonly (readonly [string, string])[]) {
  const after = new Map(names.map((name) => [name, new Set<string>()]));
  for (const [one, other] of pairs) after.get(one)?.add(other);
  for (const middle of names)
    for (const set of after.values())
      if (set.has(middle)) for (const each of after.get(middle) as Set<string>) set.add(each);
  return after;
}

type Before = StepOrder['before'];

function loopsAmong(names: readonly string[], before: Before): string[][] {
  const loops: string[][] = [];
  for (const name of names) {
    if (!before(name, name) || loops.some((loop) => loop.includes(name))) continue;
    loops.push(names.filter((each) => each === name || (before(name, each) && before(each, name))));
  }
  return loops;
}

function countBefore(names: readonly string[], before: Before, name: string): number {
  return names.filter((each) => before(each, name)).length;
}

function countOrders(names: readonly string[], before: Before): number {
  const needs = names.map((name) =>
    names.reduce((bits, each, at) => (before(each, name) ? bits | (1 << at) : bits), 0),
  );
  const ways = new Float64Array(2 ** names.length);
  ways[0] = 1;
  for (let done = 0; done < ways.length; done++) {
    if (ways[done] === 0) continue;
    needs.forEach((need, at) => {
      const bit = 1 << at;
      if ((done & bit) === 0 && (need & done) === need)
        ways[done | bit] = (ways[done | bit] as number) + (ways[done] as number);
    });
  }
  return ways[ways.length - 1] as number;
}
