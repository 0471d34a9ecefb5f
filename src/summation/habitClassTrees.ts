import type { Classes, HabitClassTree, Layout } from './layout.ts';

/**
 * One tree for every world that stands for classes.
 *
 * @param habitClasses  by part with habits: its habit class in every class, and how many habit classes it has
 */
export function habitClassTrees(
  layout: Pick<Layout, 'worldBins'>,
  classes: Classes,
  habitClasses: readonly { of: Int32Array; scenarios: readonly unknown[] }[],
): HabitClassTree[] {
  const byWorld = new Map<number, number[]>();
  classes.scenarios.forEach(({ world }, each) => {
    const mine = byWorld.get(world);
    if (mine === undefined) byWorld.set(world, [each]);
    else mine.push(each);
  });
  const longest = Math.max(0, ...habitClasses.map((each) => each.scenarios.length));
  const room: Room = { seen: new Int32Array(longest).fill(-1) };
  return [...byWorld].map(([world, mine]) => {
    const tree = { world, parts: [], habitClasses: [], from: [], to: [], ends: [] } as Grown;
    const asks = habitClasses.map(() => new Set<number>());
    grow(
      { tree, asks, classes, habitClasses, room, start: layout.worldBins[world]?.first ?? 0 },
      mine,
      habitClasses.length,
      0,
    );
    return {
      world,
      parts: Int32Array.from(tree.parts),
      habitClasses: Int32Array.from(tree.habitClasses),
      from: Int32Array.from(tree.from),
      to: Int32Array.from(tree.to),
      ends: tree.ends,
      asks: asks.map((each) => [...each]),
    };
  });
}

type Room = { seen: Int32Array };
type Grown = {
  world: number;
  parts: number[];
  habitClasses: number[];
  from: number[];
  to: number[];
  ends: (readonly number[] | undefined)[];
};
type Growth = {
  tree: Grown;
  asks: readonly Set<number>[];
  classes: Classes;
  habitClasses: readonly { of: Int32Array; scenarios: readonly unknown[] }[];
  room: Room;
  /** The first bin of the world. */
  start: number;
};

/** Adds a branch that leads to these classes, and its own branches. */
function grow(growth: Growth, mine: readonly number[], part: number, habitClass: number): void {
  const { tree, asks, classes, habitClasses, room, start } = growth;
  let [from, to] = [Number.POSITIVE_INFINITY, 0];
  for (const each of mine) {
    const first = (classes.first[each] as number) - start;
    from = Math.min(from, first);
    to = Math.max(to, first + (classes.count[each] as number));
  }
  tree.parts.push(part);
  tree.habitClasses.push(habitClass);
  tree.from.push(from);
  tree.to.push(to);
  tree.ends.push(part === 0 ? mine : undefined);
  asks[part]?.add(habitClass);
  if (part === 0) return;
  const { of } = habitClasses[part - 1] as { of: Int32Array };
  const branches: { habitClass: number; mine: number[] }[] = [];
  for (const each of mine) {
    const next = of[each] as number;
    const known = room.seen[next] as number;
    if (known < 0) {
      room.seen[next] = branches.length;
      branches.push({ habitClass: next, mine: [each] });
    } else branches[known]?.mine.push(each);
  }
  for (const branch of branches) room.seen[branch.habitClass] = -1;
  for (const branch of branches) grow(growth, branch.mine, part - 1, branch.habitClass);
}
