import type { Classes, Layout, VoiceTree } from './layout.ts';

/**
 * One tree for every world that stands for classes.
 *
 * @param voices  by voiced part: its voice in every class, and how many voices it has
 */
export function voiceTrees(
  layout: Pick<Layout, 'worldBins'>,
  classes: Classes,
  voices: readonly { of: Int32Array; columns: readonly unknown[] }[],
): VoiceTree[] {
  const byWorld = new Map<number, number[]>();
  classes.columns.forEach(({ world }, each) => {
    const mine = byWorld.get(world);
    if (mine === undefined) byWorld.set(world, [each]);
    else mine.push(each);
  });
  const longest = Math.max(0, ...voices.map((each) => each.columns.length));
  const room: Room = { seen: new Int32Array(longest).fill(-1) };
  return [...byWorld].map(([world, mine]) => {
    const tree = { world, parts: [], voices: [], from: [], to: [], ends: [] } as Grown;
    const asks = voices.map(() => new Set<number>());
    grow(
      { tree, asks, classes, voices, room, start: layout.worldBins[world]?.first ?? 0 },
      mine,
      voices.length,
      0,
    );
    return {
      world,
      parts: Int32Array.from(tree.parts),
      voices: Int32Array.from(tree.voices),
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
  voices: number[];
  from: number[];
  to: number[];
  ends: (readonly number[] | undefined)[];
};
type Growth = {
  tree: Grown;
  asks: readonly Set<number>[];
  classes: Classes;
  voices: readonly { of: Int32Array; columns: readonly unknown[] }[];
  room: Room;
  /** The first bin of the world. */
  start: number;
};

/** Adds a branch that leads to these classes, and its own branches. */
function grow(growth: Growth, mine: readonly number[], part: number, voice: number): void {
  const { tree, asks, classes, voices, room, start } = growth;
  let [from, to] = [Number.POSITIVE_INFINITY, 0];
  for (const each of mine) {
    const first = (classes.first[each] as number) - start;
    from = Math.min(from, first);
    to = Math.max(to, first + (classes.count[each] as number));
  }
  tree.parts.push(part);
  tree.voices.push(voice);
  tree.from.push(from);
  tree.to.push(to);
  tree.ends.push(part === 0 ? mine : undefined);
  asks[part]?.add(voice);
  if (part === 0) return;
  const { of } = voices[part - 1] as { of: Int32Array };
  const branches: { voice: number; mine: number[] }[] = [];
  for (const each of mine) {
    const next = of[each] as number;
    const known = room.seen[next] as number;
    if (known < 0) {
      room.seen[next] = branches.length;
      branches.push({ voice: next, mine: [each] });
    } else branches[known]?.mine.push(each);
  }
  for (const branch of branches) room.seen[branch.voice] = -1;
  for (const branch of branches) grow(growth, branch.mine, part - 1, branch.voice);
}
