import { worlds } from '../evidence/worlds.ts';
import { type Folding, fillFactor, fold } from './fold.ts';
import type { HabitClassTree } from './layout.ts';
import { type Lend, noughts, withRoom } from './memory.ts';
import { kindOf } from './model.ts';
import { fillCliqueLines, idleOwn, levelsOf, type ReadyClique, roomForParts, setsOf } from './readyClique.ts';
import type { PartLines } from './readyPart.ts';
import { lineAt } from './scenarioClasses.ts';

/**
 * What a clique's looks say, its own unknowns summed out: a line over the bins of the world for every cutset state of the clique,
 * class and level (period work only has the stricter ones), at `lineAt`. True values are these times e^log.
 */
export type CliqueLines = { values: Float64Array; cutsetStateOf: Int32Array; log: number };

/**
 * Sums a clique exactly over its parts' origins and years and its alterations' states and years.
 *
 * Method: the sum is one polynomial in the parts' factors, linear in each, whose coefficients (`changeSums`) are the weights
 * of the sets of parts that alterations changed. They hang on the bin alone, so they are made once; a class of scenarios
 * then costs a folding of the sets, part by part, and classes alike in the first parts folded share those steps.
 */
export function cliqueLines(ready: ReadyClique): CliqueLines {
  const { shape } = ready;
  const values = noughts(shape.cutsetStates.length * shape.classes.size);
  withRoom((lend) => sumInto(values, ready, lend));
  return { values, cutsetStateOf: shape.cutsetStateOf, log: ready.log };
}

function sumInto(values: Float64Array, ready: ReadyClique, lend: Lend): void {
  const { shape, model } = ready;
  const lines = roomForParts(ready, lend);
  const rooms = roomForSets(ready, lend);
  const factor = lend(rooms[0]?.length ?? 0);
  for (let cutsetState = 0; cutsetState < shape.cutsetStates.length; cutsetState++) {
    for (const tree of shape.trees) {
      const { count } = model.layout.worldBins[tree.world] ?? { count: 0 };
      for (const k of levelsOf(ready, tree.world, cutsetState)) {
        if (shape.same[k] === true) continue;
        fillCliqueLines(lines, ready, tree.world, cutsetState, k);
        startSets(ready, rooms, tree.world, k);
        if (k === 3) multiplyIdle(ready, rooms, tree.world);
        const foldings = foldingsOf(ready, k, count);
        for (let p = shape.parts.length - 1; p >= shape.withHabits; p--) {
          const habitClass = ready.parts[p]?.table.ownMaking[0] as number;
          fillFactor(factor, lines[p] as PartLines, habitClass, 0, count);
          fold(rooms[p + 1] as Float64Array, rooms[p] as Float64Array, factor, foldings[p] as Folding);
        }
        walk(values, { ready, lines, rooms, factor, foldings, cutsetState, k }, tree);
      }
    }
  }
}

/** Room and readings for one walk down a tree; lent out and used again. */
type Walk = {
  ready: ReadyClique;
  lines: readonly PartLines[];
  /** By number of parts not yet folded away: sets × bins. */
  rooms: readonly Float64Array[];
  factor: Float64Array;
  foldings: readonly Folding[];
  cutsetState: number;
  k: number;
};

/** Goes down a tree, every step folding one more part away, and writes the lines of the classes at its ends. */
function walk(values: Float64Array, way: Walk, tree: HabitClassTree): void {
  const { ready, lines, rooms, factor, foldings, cutsetState, k } = way;
  const { classes, same, withHabits } = ready.shape;
  const { parts, habitClasses, from, to, ends } = tree;
  const worldFirst = ready.model.layout.worldBins[tree.world]?.first ?? 0;
  const repeats = sameAs(same, k);
  for (let n = 0; n < parts.length; n++) {
    const p = parts[n] as number;
    const habitClass =
      p < withHabits ? (ready.parts[p]?.table.ownMaking[habitClasses[n] as number] as number) : 1;
    const here = ends[n];
    if (p > 0 && p < withHabits) {
      const folding = foldings[p] as Folding;
      folding.from = from[n] as number;
      folding.to = to[n] as number;
      fillFactor(factor, lines[p] as PartLines, habitClass, folding.from, folding.to);
      fold(rooms[p + 1] as Float64Array, rooms[p] as Float64Array, factor, folding);
    }
    if (here === undefined) continue;
    for (let e = 0; e < here.length; e++) {
      const each = here[e] as number;
      const skip = (classes.first[each] as number) - worldFirst;
      const length = classes.count[each] as number;
      const at = lineAt(classes, cutsetState, each, k);
      if (withHabits > 0) endLine(values, at, way, habitClass, skip, length);
      else {
        const line = rooms[0] as Float64Array;
        for (let i = 0; i < length; i++) values[at + i] = line[skip + i] as number;
      }
      const levels = classes.levels[each] === 4 ? repeats : 1;
      for (let level = 1; level < levels; level++) values.copyWithin(at + level * length, at, at + length);
    }
  }
}

/** Folds the first part away for one class, straight into its place. */
function endLine(
  values: Float64Array,
  at: number,
  way: Walk,
  habitClass: number,
  skip: number,
  length: number,
): void {
  const { bit, count } = way.foldings[0] as Folding;
  const { own, rest } = way.lines[0] as PartLines;
  const held = way.rooms[1] as Float64Array;
  if (bit === 0)
    for (let i = 0, j = skip; i < length; i++, j++)
      values[at + i] = ((own[j] as number) * habitClass + (rest[j] as number)) * (held[j] as number);
  else
    for (let i = 0, j = skip; i < length; i++, j++)
      values[at + i] =
        (held[count + j] as number) +
        ((own[j] as number) * habitClass + (rest[j] as number)) * (held[j] as number);
}

/** Room for the sets of the first so many parts, for every number of parts. */
export function roomForSets({ shape, model }: ReadyClique, lend: Lend): Float64Array[] {
  const longest = Math.max(...model.layout.worldBins.map((bins) => bins.count));
  return Array.from({ length: shape.parts.length + 1 }, (_, p) => lend(2 ** p * longest));
}

/** For every part of a clique, how it is folded away at a level. */
export function foldingsOf({ shape }: ReadyClique, k: number, count: number): Folding[] {
  return shape.parts.map((_, p) => ({
    live: (shape.live[k] as readonly Int32Array[])[p] as Int32Array,
    bit: (shape.live[k]?.[p + 1]?.length ?? 0) > (shape.live[k]?.[p]?.length ?? 0) ? 1 << p : 0,
    count,
    from: 0,
    to: count,
  }));
}

/** Puts the weights of the sets of changed parts, over a world's bins, into the room for all parts. */
export function startSets(
  ready: ReadyClique,
  rooms: readonly Float64Array[],
  world: number,
  k: number,
): void {
  const { shape, model } = ready;
  const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
  const base = rooms[shape.parts.length] as Float64Array;
  const { bins, sums } = setsOf(ready, kindOf(worlds[world]?.making ?? 'period'), k);
  for (const set of shape.live[k]?.[shape.parts.length] ?? []) {
    const from = set * bins.count + first - bins.first;
    for (let i = 0; i < count; i++) base[set * count + i] = sums[from + i] as number;
  }
}

/** How many levels from this one on sum the same. */
function sameAs(same: readonly boolean[], k: number): number {
  let next = k + 1;
  while (same[next] === true) next++;
  return next - k;
}

/** Multiplies the weights of the sets by how probable it is that the parts nothing was looked for on are of the making. */
export function multiplyIdle(ready: ReadyClique, rooms: readonly Float64Array[], world: number): void {
  const own = idleOwn(ready, world);
  if (own === undefined) return;
  const { parts, live } = ready.shape;
  const base = rooms[parts.length] as Float64Array;
  for (const set of live[3]?.[parts.length] ?? [])
    for (let i = 0; i < own.length; i++)
      base[set * own.length + i] = (base[set * own.length + i] as number) * (own[i] as number);
}
