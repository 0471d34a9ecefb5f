import type { Alteration } from '../knowledge/schema.ts';
import { changedLine, eachStep, yearMean } from './changeSums.ts';
import { type Classes, lineAt } from './columnClasses.ts';
import { type Folding, fillFactor, fold, unfold } from './fold.ts';
import type { PartLines } from './readyPart.ts';
import {
  binsOf,
  fillUnitLines,
  idleOwn,
  levelsOf,
  type ReadyUnit,
  roomForParts,
  setsOf,
} from './readyUnit.ts';
import { foldingsOf, roomForSets, startSets } from './unitLines.ts';
import type { VoiceTree } from './unitShape.ts';
import { type Making, worlds } from './worlds.ts';

/** Slots of a message: the four makings, then period work at the three stricter levels. */
export const slotMakings: readonly Making[] = ['period', 'bench-copy', 'machine-copy', 'to-deceive'];
export const slotCount = slotMakings.length + 3;

/** The slot of a world at a strictness. */
export function slotOf(world: number, k: number): number {
  return k === 0 ? slotMakings.indexOf(worlds[world]?.making ?? 'period') : slotMakings.length + k - 1;
}

/** By alteration and set of parts it changed: by slot and bin of the making, what meets the mean over its years. */
export type ChangeSlots = { alteration: number; changed: number; slots: Float64Array[] };

/** Told what meets a part's own factor for one world, voice, config and strictness, by bin of the world. Lent, not given. */
export type GivePart = (
  part: number,
  at: { world: number; voice: number; config: number; k: number },
  line: Float64Array,
) => void;

/**
 * What all the rest says to each part of a unit: the derivative of the whole sum by the part's factor and by the mean over
 * the years of each change, which is all that is needed to put other looks in the place of its own.
 *
 * Method: the folding of `unitLines` run backwards (reverse accumulation), so that all parts cost about three sums.
 *
 * @param rest  the sum of all else, by config of the unit and its classes
 */
export function unitMessage(ready: ReadyUnit, rest: Float64Array, give: GivePart): ChangeSlots[] {
  const { shape, model } = ready;
  const n = shape.parts.length;
  const lines = roomForParts(ready);
  const [held, back] = [roomForSets(ready), roomForSets(ready)];
  const factors = held.map(() => new Float64Array(held[0]?.length ?? 0));
  const line = new Float64Array(held[0]?.length ?? 0);
  const bySlot = Array.from({ length: slotCount }, (_, slot) => {
    const period = slot === 0 || slot >= slotMakings.length;
    return new Float64Array(2 ** n * binsOf(model, period).count);
  });
  for (let config = 0; config < shape.configs.length; config++) {
    for (const { world, root } of shape.trees) {
      const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
      for (const k of levelsOf(ready, world, config)) {
        fillUnitLines(lines, ready, world, config, k);
        startSets(ready, held, world, k);
        const own = k === 3 ? idleOwn(ready, world) : undefined;
        const foldings = foldingsOf(ready, k, count);
        const live = (depth: number) => shape.live[k]?.[depth] ?? [];
        const clear = (depth: number) => {
          const into = back[depth] as Float64Array;
          for (const set of live(depth)) into.fill(0, set * count, (set + 1) * count);
        };
        const step = (p: number, node: { voice: number; from: number; to: number }, deeper: () => void) => {
          const [above, below] = [held[p + 1] as Float64Array, held[p] as Float64Array];
          const folding = { ...(foldings[p] as Folding), from: node.from, to: node.to };
          const factor = factors[p] as Float64Array;
          const voice = ready.parts[p]?.table.ownMaking[node.voice] as number;
          fillFactor(factor, lines[p] as PartLines, voice, node.from, node.to);
          fold(above, below, factor, folding);
          deeper();
          unfold(back[p + 1] as Float64Array, back[p] as Float64Array, above, factor, line, folding);
          give(p, { world, voice: node.voice, config, k }, line);
        };
        const walk = (node: VoiceTree, depth: number) => {
          clear(depth);
          if (depth === 0)
            addEnds(back[0] as Float64Array, shape.classes, node.classes, rest, { config, k, own, first });
          else for (const branch of node.branches) step(depth - 1, branch, () => walk(branch, depth - 1));
        };
        const down = (depth: number): void => {
          if (depth === shape.voiced) walk(root, depth);
          else {
            clear(depth);
            step(depth - 1, { voice: 0, from: 0, to: count }, () => down(depth - 1));
          }
        };
        down(n);
        const total = bySlot[slotOf(world, k)] as Float64Array;
        const width = total.length / 2 ** n;
        const skip = first - binsOf(model, worlds[world]?.making === 'period').first;
        for (const set of live(n))
          for (let i = 0; i < count; i++)
            total[set * width + skip + i] =
              (total[set * width + skip + i] as number) +
              ((back[n] as Float64Array)[set * count + i] as number);
      }
    }
  }
  return changeSlots(ready, bySlot);
}

function addEnds(
  into: Float64Array,
  classes: Classes,
  ends: readonly number[],
  rest: Float64Array,
  { config, k, own, first }: { config: number; k: number; own: Float64Array | undefined; first: number },
): void {
  for (const each of ends) {
    const skip = (classes.first[each] as number) - first;
    const at = lineAt(classes, config, each, k) - skip;
    const end = skip + (classes.count[each] as number);
    for (let i = skip; i < end; i++)
      into[i] = (into[i] as number) + (rest[at + i] as number) * (own === undefined ? 1 : (own[i] as number));
  }
}

/** From what meets each set's weight, what meets the mean over the years of each change that can have made it. */
function changeSlots(ready: ReadyUnit, bySlot: readonly Float64Array[]): ChangeSlots[] {
  const { shape, changes, model } = ready;
  const { bins: axisBins } = model.layout.prepared.axis;
  const found = new Map<string, ChangeSlots>();
  bySlot.forEach((total, slot) => {
    const period = slot === 0 || slot >= slotMakings.length;
    const k = Math.max(0, slot - slotMakings.length + 1);
    const { bins, before } = setsOf(ready, period, k);
    let after = total;
    for (let a = shape.masks.length - 1; a >= 0; a--) {
      const sums = before[a] as Float64Array;
      const earlier = new Float64Array(after.length);
      const now = after;
      eachStep(changes, period, k, a, ({ from, changed, weight }) => {
        const mean = yearMean(changes, a, changed);
        const [at, to] = [from * bins.count, (from | changed) * bins.count];
        for (let i = 0; i < bins.count; i++)
          earlier[at + i] =
            (earlier[at + i] as number) +
            weight * (mean === undefined ? 1 : (mean[bins.first + i] as number)) * (now[to + i] as number);
        if (changed === 0) return;
        const key = `${a} ${changed}`;
        const each = found.get(key) ?? {
          alteration: a,
          changed,
          slots: Array.from({ length: slotCount }, () => new Float64Array(axisBins)),
        };
        found.set(key, each);
        const line = each.slots[slot] as Float64Array;
        for (let i = 0; i < bins.count; i++)
          line[bins.first + i] =
            (line[bins.first + i] as number) + weight * (sums[at + i] as number) * (now[to + i] as number);
      });
      after = earlier;
    }
  });
  return [...found.values()];
}

/** What the other parts changed together with one say of the year of a change; undefined if there are none. */
export function othersLine(
  ready: ReadyUnit,
  { alteration, changed }: ChangeSlots,
  part: number,
): Float64Array | undefined {
  const others = changed & ~(1 << part);
  return others === 0 ? undefined : changedLine(ready.changes, alteration, others);
}

/** The alteration that a change is by. */
export function alterationOf(ready: ReadyUnit, each: ChangeSlots): Alteration {
  return ready.shape.unit.alterations[each.alteration] as Alteration;
}
