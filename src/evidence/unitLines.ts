import { lineAt } from './columnClasses.ts';
import type { PartLines } from './readyPart.ts';
import { fillUnitLines, idleOwn, levelsOf, type ReadyUnit, roomForParts, setsOf } from './readyUnit.ts';
import type { VoiceTree } from './unitShape.ts';

/**
 * What a unit's looks say, its own unknowns summed out: a line over the bins of the world for every config of the unit,
 * class and strictness (period work only has the stricter ones), at `lineAt`. True values are these times e^log.
 */
export type UnitLines = { values: Float64Array; configOf: Int32Array; log: number };

/** What the walk down one tree needs. */
type Walk = {
  ready: ReadyUnit;
  lines: readonly PartLines[];
  /** Room for each step down: sets × bins. */
  rooms: readonly Float64Array[];
  count: number;
  leaf: (classes: readonly number[], line: Float64Array) => void;
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
  const longest = Math.max(...model.layout.worldBins.map((bins) => bins.count));
  const rooms = Array.from({ length: shape.parts.length + 1 }, (_, p) => new Float64Array(2 ** p * longest));
  for (let config = 0; config < shape.configs.length; config++) {
    for (const { world, root } of shape.trees) {
      const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
      for (const k of levelsOf(ready, world, config)) {
        if (shape.same[k] === true) {
          copyLevel(values, ready, world, config, k);
          continue;
        }
        fillUnitLines(lines, ready, world, config, k);
        const own = k === 3 ? idleOwn(ready, world) : undefined;
        const leaf = (ends: readonly number[], line: Float64Array) => {
          for (const each of ends) {
            const at = lineAt(classes, config, each, k);
            for (let i = 0; i < count; i++)
              values[at + i] =
                own === undefined ? (line[i] as number) : (line[i] as number) * (own[i] as number);
          }
        };
        const base = startingSets(ready, rooms, world, k, first, count);
        foldSilent(ready, lines, base, count);
        walk({ ready, lines, rooms, count, leaf }, root, shape.voiced, base);
      }
    }
  }
  return { values, configOf: shape.configOf, log: ready.log };
}

function copyLevel(
  values: Float64Array,
  { shape }: ReadyUnit,
  world: number,
  config: number,
  k: number,
): void {
  shape.classes.columns.forEach((column, each) => {
    if (column.world !== world) return;
    const from = lineAt(shape.classes, config, each, k - 1);
    values.copyWithin(
      lineAt(shape.classes, config, each, k),
      from,
      from + (shape.classes.count[each] as number),
    );
  });
}

/** The coefficients over a world's bins, in the largest room. */
export function startingSets(
  ready: ReadyUnit,
  rooms: readonly Float64Array[],
  world: number,
  k: number,
  first: number,
  count: number,
): Float64Array {
  const n = ready.shape.parts.length;
  const base = rooms[n] as Float64Array;
  const period = ready.shape.classes.levels[classOf(ready, world)] === 4;
  const sets = setsOf(ready, period, k);
  const skip = first - sets.bins.first;
  for (let set = 0; set < 2 ** n; set++) {
    const from = set * sets.bins.count + skip;
    const to = set * count;
    for (let i = 0; i < count; i++) base[to + i] = sets.sums[from + i] as number;
  }
  return base;
}

function classOf({ shape }: ReadyUnit, world: number): number {
  return shape.classes.columns.findIndex((column) => column.world === world);
}

/** Folds away the parts without a voice, in place. */
function foldSilent(ready: ReadyUnit, lines: readonly PartLines[], base: Float64Array, count: number): void {
  const { parts, voiced } = ready.shape;
  for (let p = parts.length - 1; p >= voiced; p--) {
    const voice = ready.parts[p]?.table.ownMaking[0] ?? 1;
    fold(base, base, lines[p] as PartLines, voice, 2 ** p, count);
  }
}

/** Goes down the tree: each branch folds one more part away, with its voice. */
function walk(way: Walk, node: VoiceTree, depth: number, held: Float64Array): void {
  if (depth === 0) {
    way.leaf(node.classes, held);
    return;
  }
  const p = depth - 1;
  const { ready, lines, rooms, count } = way;
  const voices = ready.parts[p]?.table.ownMaking as Float64Array;
  const room = rooms[p] as Float64Array;
  for (const branch of node.branches) {
    fold(held, room, lines[p] as PartLines, voices[branch.voice] as number, 2 ** p, count);
    walk(way, branch, p, room);
  }
}

/** Folds the last part of `held` away: either it was changed, or it has its own factor. */
export function fold(
  held: Float64Array,
  into: Float64Array,
  { own, rest }: PartLines,
  voice: number,
  sets: number,
  count: number,
): void {
  const half = sets * count;
  for (let at = 0; at < half; at += count) {
    for (let i = 0; i < count; i++) {
      into[at + i] =
        (held[half + at + i] as number) +
        ((own[i] as number) * voice + (rest[i] as number)) * (held[at + i] as number);
    }
  }
}
