import { lineAt } from './columnClasses.ts';
import { type Folding, fillFactor, fold } from './fold.ts';
import type { PartLines } from './readyPart.ts';
import { fillUnitLines, idleOwn, levelsOf, type ReadyUnit, roomForParts, setsOf } from './readyUnit.ts';
import type { VoiceTree } from './unitShape.ts';
import { worlds } from './worlds.ts';

/**
 * What a unit's looks say, its own unknowns summed out: a line over the bins of the world for every config of the unit,
 * class and strictness (period work only has the stricter ones), at `lineAt`. True values are these times e^log.
 */
export type UnitLines = { values: Float64Array; configOf: Int32Array; log: number };

/** Room and readings for one walk down the trees of a unit; lent out and used again. */
type Walk = {
  ready: ReadyUnit;
  lines: readonly PartLines[];
  /** By number of parts not yet folded away: sets × bins. */
  rooms: readonly Float64Array[];
  factors: readonly Float64Array[];
  foldings: readonly Folding[];
  leaf: (node: VoiceTree, line: Float64Array) => void;
};

/**
 * Sums a unit exactly over its parts' origins and years and its alterations' states and years.
 *
 * Method: the sum is one polynomial in the parts' factors, linear in each, whose coefficients (`changeSums`) are the weights
 * of the sets of parts that alterations changed. They hang on the bin alone, so they are made once; a class of columns
 * then costs a folding of the sets, part by part, and classes alike in the first parts folded share those steps.
 */
export function unitLines(ready: ReadyUnit): UnitLines {
  const { shape, model } = ready;
  const { classes } = shape;
  const values = new Float64Array(shape.configs.length * classes.size);
  const lines = roomForParts(ready);
  const rooms = roomForSets(ready);
  const factors = rooms.map(() => new Float64Array(rooms[0]?.length ?? 0));
  for (let config = 0; config < shape.configs.length; config++) {
    for (const { world, root } of shape.trees) {
      const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
      for (const k of levelsOf(ready, world, config)) {
        if (shape.same[k] === true) continue;
        const levels = sameAs(shape.same, k);
        fillUnitLines(lines, ready, world, config, k);
        const own = k === 3 ? idleOwn(ready, world) : undefined;
        const leaf = (node: VoiceTree, line: Float64Array) => {
          for (const each of node.classes) {
            const skip = (classes.first[each] as number) - first;
            const length = classes.count[each] as number;
            const at = lineAt(classes, config, each, k) - skip;
            for (let i = skip; i < skip + length; i++)
              values[at + i] =
                own === undefined ? (line[i] as number) : (line[i] as number) * (own[i] as number);
            if (classes.levels[each] === 4)
              for (let again = at + length; again < at + levels * length; again += length)
                for (let i = skip; i < skip + length; i++) values[again + i] = values[at + i] as number;
          }
        };
        startSets(ready, rooms, world, k);
        const foldings = foldingsOf(ready, k, count);
        const way = { ready, lines, rooms, factors, foldings, leaf };
        for (let p = shape.parts.length - 1; p >= shape.voiced; p--) step(way, p, 0, 0, count);
        walk(way, root, shape.voiced);
      }
    }
  }
  return { values, configOf: shape.configOf, log: ready.log };
}

/** Room for the sets of the first so many parts, for every number of parts. */
export function roomForSets({ shape, model }: ReadyUnit): Float64Array[] {
  const longest = Math.max(...model.layout.worldBins.map((bins) => bins.count));
  return Array.from({ length: shape.parts.length + 1 }, (_, p) => new Float64Array(2 ** p * longest));
}

/** For every part of a unit, how it is folded away at a strictness. */
export function foldingsOf({ shape }: ReadyUnit, k: number, count: number): Folding[] {
  return shape.parts.map((_, p) => ({
    live: shape.live[k]?.[p] ?? [],
    bit: (shape.live[k]?.[p + 1]?.length ?? 0) > (shape.live[k]?.[p]?.length ?? 0) ? 1 << p : 0,
    count,
    from: 0,
    to: count,
  }));
}

/** Puts the weights of the sets of changed parts, over a world's bins, into the room for all parts. */
export function startSets(ready: ReadyUnit, rooms: readonly Float64Array[], world: number, k: number): void {
  const { shape, model } = ready;
  const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
  const base = rooms[shape.parts.length] as Float64Array;
  const { bins, sums } = setsOf(ready, worlds[world]?.making === 'period', k);
  for (const set of shape.live[k]?.[shape.parts.length] ?? []) {
    const from = set * bins.count + first - bins.first;
    for (let i = 0; i < count; i++) base[set * count + i] = sums[from + i] as number;
  }
}

/** How many strictnesses from this one on sum the same. */
function sameAs(same: readonly boolean[], k: number): number {
  let next = k + 1;
  while (same[next] === true) next++;
  return next - k;
}

/** Folds one part away, with one voice. */
function step(way: Walk, p: number, voice: number, from: number, to: number): void {
  const { ready, lines, rooms, factors, foldings } = way;
  const folding = foldings[p] as Folding;
  folding.from = from;
  folding.to = to;
  const factor = factors[p] as Float64Array;
  fillFactor(factor, lines[p] as PartLines, ready.parts[p]?.table.ownMaking[voice] as number, from, to);
  fold(rooms[p + 1] as Float64Array, rooms[p] as Float64Array, factor, folding);
}

/** Goes down the tree: each branch folds one more part away, with its voice. */
function walk(way: Walk, node: VoiceTree, depth: number): void {
  if (depth === 0) {
    way.leaf(node, way.rooms[0] as Float64Array);
    return;
  }
  for (const branch of node.branches) {
    step(way, depth - 1, branch.voice, branch.from, branch.to);
    walk(way, branch, depth - 1);
  }
}
