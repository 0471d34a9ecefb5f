import { type Making, makings, worlds } from '../evidence/worlds.ts';
import type { Alteration } from '../knowledge/schema.ts';
import { stepsOf } from './changeSteps.ts';
import { type Chance, changedLine, yearMean } from './changeSums.ts';
import { foldingsOf, multiplyIdle, roomForSets, startSets } from './cliqueLines.ts';
import { type Folding, fillFactor, fold, unfold } from './fold.ts';
import type { Bins, Classes, HabitClassTree } from './layout.ts';
import { type Lend, linesTogether } from './memory.ts';
import { kindOf, type PieceKind, pieceKinds } from './model.ts';
import {
  binsOf,
  fillCliqueLines,
  idleOwn,
  levelsOf,
  type ReadyClique,
  roomForParts,
  setsOf,
} from './readyClique.ts';
import type { PartLines } from './readyPart.ts';
import { lineAt } from './scenarioClasses.ts';

/**
 * Outcomes of a message: the four makings, then period work at the three stricter levels. A plain message, without these, has
 * but one for each kind of piece.
 */
export const outcomeMakings = makings;
export const outcomeCount = outcomeMakings.length + 3;
export const plainOutcomeCount = pieceKinds.length;

/** The outcome of a world at a level. */
export function outcomeOf(world: number, k: number, strict = true): number {
  const making = worlds[world]?.making ?? 'period';
  if (!strict) return pieceKinds.indexOf(kindOf(making));
  return k === 0 ? outcomeMakings.indexOf(making) : outcomeMakings.length + k - 1;
}

/** The kind of piece that an outcome is of. */
function kindOfOutcome(outcome: number, strict: boolean): PieceKind {
  if (!strict) return pieceKinds[outcome] as PieceKind;
  return outcome >= outcomeMakings.length ? 'period' : kindOf(outcomeMakings[outcome] as Making);
}

/** By alteration of the clique: by outcome, the mass if it did not happen and if it did, what its own looks say left out. */
export type Splits = readonly (readonly [not: Float64Array, happened: Float64Array])[];

/** By alteration and set of parts it changed: by outcome and bin of the making, what meets the mean over its years. */
export type ChangeOutcomes = { alteration: number; changed: number; outcomes: Float64Array[] };

/**
 * Told what meets a part's own factor for one world, cutset state and level, by bin of the world, for each of the habit classes that
 * come up: habit class v has its line from v · count on. Lent, not given.
 */
export type GivePart = (
  part: number,
  at: { world: number; cutsetState: number; k: number },
  lines: Float64Array,
  habitClasses: readonly number[],
) => void;

/**
 * What all the rest says to each part of a clique: the derivative of the whole sum by the part's factor and by the mean over
 * the years of each change, which is all that is needed to put other looks in the place of its own.
 *
 * Method: the folding of `cliqueLines` run backwards (reverse accumulation), so that all parts cost about three sums.
 *
 * @param rest    the sum of all else, by cutset state of the clique and its classes
 * @param strict  false leaves the stricter levels out, which only the readings ask for
 * @param lend    for what is not handed back
 */
export function cliqueMessage(
  ready: ReadyClique,
  rest: Float64Array,
  give: GivePart,
  strict: boolean,
  lend: Lend,
): { changes: ChangeOutcomes[]; splits: Splits } {
  const { shape, model } = ready;
  const n = shape.parts.length;
  const [held, back] = [roomForSets(ready, lend), roomForSets(ready, lend)];
  const longest = held[0]?.length ?? 0;
  const run: Run = {
    ready,
    rest,
    classes: strict ? shape.classes : shape.plain,
    lines: roomForParts(ready, lend),
    held,
    back,
    factors: shape.parts.map(() => lend(longest)),
    byHabitClass: shape.habitClasses.map(({ scenarios }) => lend(scenarios.length * longest)),
  };
  const byOutcome = Array.from({ length: strict ? outcomeCount : plainOutcomeCount }, (_, outcome) => {
    const period = kindOfOutcome(outcome, strict) === 'period';
    return lend(2 ** n * binsOf(model, period).count);
  });
  for (let cutsetState = 0; cutsetState < shape.cutsetStates.length; cutsetState++) {
    for (const tree of shape.trees) {
      const { world } = tree;
      const { first, count } = model.layout.worldBins[world] ?? { first: 0, count: 0 };
      for (const k of strict ? levelsOf(ready, world, cutsetState) : [0]) {
        runBack(run, tree, cutsetState, k, give);
        const own = k === 3 ? idleOwn(ready, world) : undefined;
        const total = byOutcome[outcomeOf(world, k, strict)] as Float64Array;
        const width = total.length / 2 ** n;
        const skip = first - binsOf(model, worlds[world]?.making === 'period').first;
        for (const set of shape.live[k]?.[n] ?? [])
          for (let i = 0; i < count; i++)
            total[set * width + skip + i] =
              (total[set * width + skip + i] as number) +
              ((back[n] as Float64Array)[set * count + i] as number) *
                (own === undefined ? 1 : (own[i] as number));
      }
    }
  }
  return changeOutcomes(ready, byOutcome, lend);
}

/** Room and readings for the runs over one clique; lent out and used again. */
type Run = {
  ready: ReadyClique;
  rest: Float64Array;
  classes: Classes;
  lines: readonly PartLines[];
  held: readonly Float64Array[];
  back: readonly Float64Array[];
  factors: readonly Float64Array[];
  /** By part: a line for each of its habit classes. */
  byHabitClass: readonly Float64Array[];
};

/** One tree at one level, down and back; what meets each part's factor is given by habit class. */
function runBack(run: Run, tree: HabitClassTree, cutsetState: number, k: number, give: GivePart): void {
  const { ready, lines, held, back, factors, byHabitClass } = run;
  const { shape, model } = ready;
  const { withHabits } = shape;
  const { world } = tree;
  const { count } = model.layout.worldBins[world] ?? { count: 0 };
  fillCliqueLines(lines, ready, world, cutsetState, k);
  startSets(ready, held, world, k);
  if (k === 3) multiplyIdle(ready, held, world);
  const foldings = foldingsOf(ready, k, count);
  const inUse = shape.parts.map(() => 0);
  byHabitClass.forEach((each, p) => {
    for (const habitClass of tree.asks[p] ?? onlyHabitClass)
      each.fill(0, habitClass * count, (habitClass + 1) * count);
  });
  clear(
    back[shape.parts.length] as Float64Array,
    shape.live[k]?.[shape.parts.length] as Int32Array,
    count,
    0,
    count,
  );
  let lowest = shape.parts.length;
  for (let node = 0; node < tree.parts.length; node++) {
    const at = tree.parts[node] as number;
    const ends = tree.ends[node];
    if (at === 0 && withHabits > 0) {
      // The first part is folded away and back at once, so that what it leaves is never written down.
      endsBack(run, ends ?? [], tree.habitClasses[node] as number, foldings[0] as Folding, {
        world,
        cutsetState,
        k,
      });
      continue;
    }
    // The root stands for all parts that have but one habit class.
    for (let p = at === withHabits && node === 0 ? shape.parts.length - 1 : at; p >= at; p--) {
      const isVoiced = p < withHabits;
      while (lowest <= p) leave(run, lowest++, inUse, foldings, count);
      const folding = foldings[p] as Folding;
      folding.from = isVoiced ? (tree.from[node] as number) : 0;
      folding.to = isVoiced ? (tree.to[node] as number) : count;
      const habitClass = isVoiced ? (tree.habitClasses[node] as number) : 0;
      inUse[p] = habitClass;
      const factor = factors[p] as Float64Array;
      const scale = ready.parts[p]?.table.ownMaking[habitClass] as number;
      fillFactor(factor, lines[p] as PartLines, scale, folding.from, folding.to);
      // What is left when the last part is folded away is the sum itself, which is not asked for on the way back.
      if (p > 0) fold(held[p + 1] as Float64Array, held[p] as Float64Array, factor, folding);
      clear(back[p] as Float64Array, folding.live, count, folding.from, folding.to);
      lowest = p;
    }
    if (ends !== undefined) addEnds(back[0] as Float64Array, run, ends, world, cutsetState, k);
  }
  while (lowest < shape.parts.length) leave(run, lowest++, inUse, foldings, count);
  for (let p = 0; p < byHabitClass.length; p++)
    give(p, { world, cutsetState, k }, byHabitClass[p] as Float64Array, tree.asks[p] ?? onlyHabitClass);
}

function endsBack(
  { ready, rest, classes, lines, held, back, byHabitClass }: Run,
  ends: readonly number[],
  habitClass: number,
  { bit, count }: Folding,
  { world, cutsetState, k }: { world: number; cutsetState: number; k: number },
): void {
  const worldFirst = ready.model.layout.worldBins[world]?.first ?? 0;
  const scale = ready.parts[0]?.table.ownMaking[habitClass] as number;
  const { own, rest: other } = lines[0] as PartLines;
  const into = back[1] as Float64Array;
  const above = held[1] as Float64Array;
  const line = byHabitClass[0] as Float64Array;
  const lineFrom = habitClass * count;
  for (let e = 0; e < ends.length; e++) {
    const each = ends[e] as number;
    const at = lineAt(classes, cutsetState, each, k);
    const skip = (classes.first[each] as number) - worldFirst;
    const end = skip + (classes.count[each] as number);
    for (let j = skip, i = at; j < end; j++, i++) {
      const met = rest[i] as number;
      into[j] = (into[j] as number) + met * ((own[j] as number) * scale + (other[j] as number));
      line[lineFrom + j] = (line[lineFrom + j] as number) + met * (above[j] as number);
      if (bit !== 0) into[count + j] = (into[count + j] as number) + met;
    }
  }
}

function leave(
  { held, back, factors, byHabitClass }: Run,
  p: number,
  inUse: readonly number[],
  foldings: readonly Folding[],
  count: number,
): void {
  unfold(
    back[p + 1] as Float64Array,
    back[p] as Float64Array,
    held[p + 1] as Float64Array,
    factors[p] as Float64Array,
    byHabitClass[p] as Float64Array,
    (inUse[p] as number) * count,
    foldings[p] as Folding,
  );
}

function clear(into: Float64Array, live: Int32Array, count: number, from: number, to: number): void {
  for (let s = 0; s < live.length; s++) {
    const at = (live[s] as number) * count;
    for (let i = at + from; i < at + to; i++) into[i] = 0;
  }
}

const onlyHabitClass: readonly number[] = [0];

function addEnds(
  into: Float64Array,
  { ready, rest, classes }: Run,
  ends: readonly number[],
  world: number,
  cutsetState: number,
  k: number,
): void {
  const worldFirst = ready.model.layout.worldBins[world]?.first ?? 0;
  for (const each of ends) {
    const skip = (classes.first[each] as number) - worldFirst;
    const length = classes.count[each] as number;
    const at = lineAt(classes, cutsetState, each, k);
    for (let i = 0; i < length; i++) into[skip + i] = (into[skip + i] as number) + (rest[at + i] as number);
  }
}

/**
 * From what meets each set's weight, what meets the mean over the years of each change that can have made it; and, where the stricter
 * levels are asked for, the posterior with and without each alteration.
 */
function changeOutcomes(
  ready: ReadyClique,
  byOutcome: readonly Float64Array[],
  lend: Lend,
): { changes: ChangeOutcomes[]; splits: Splits } {
  const { shape, changes, model } = ready;
  const { bins: axisBins } = model.layout.prepared.axis;
  const found = new Map<string, ChangeOutcomes>();
  const strict = byOutcome.length === outcomeCount;
  const splits = shape.masks.map(
    () => [new Float64Array(outcomeCount), new Float64Array(outcomeCount)] as const,
  );
  const longest = Math.max(...byOutcome.map((each) => each.length));
  const rooms = shape.masks.map(() => lend(longest));
  byOutcome.forEach((total, outcome) => {
    const kind = kindOfOutcome(outcome, strict);
    const k = Math.max(0, outcome - outcomeMakings.length + 1);
    const { bins, before } = setsOf(ready, kind, k);
    let after = total;
    for (let a = shape.masks.length - 1; a >= 0; a--) {
      const sums = before[a] as Float64Array;
      const earlier = (rooms[a] as Float64Array).fill(0);
      const [sumNot, sumHappened] = splits[a] as Splits[number];
      const chance = changes.chances[kind][a] as Chance;
      const { from, changed, ifHappened } = stepsOf(shape, k, a);
      for (let s = 0; s < from.length; s++) {
        const set = changed[s] as number;
        const at = (from[s] as number) * bins.count;
        const to = ((from[s] as number) | set) * bins.count;
        const mean = yearMean(changes, a, set);
        const line = set === 0 ? undefined : changeLine(found, a, set, outcome, byOutcome.length, axisBins);
        const weight = chance.happened * (ifHappened[s] as number) + (set === 0 ? chance.not : 0);
        if (line !== undefined)
          for (let i = 0, bin = bins.first; i < bins.count; i++, bin++)
            line[bin] = (line[bin] as number) + weight * (sums[at + i] as number) * (after[to + i] as number);
        // Before the first alteration nothing is asked for.
        if (a > 0) addBack(earlier, after, weight, mean, bins, at, to);
        if (!strict) continue;
        const met = metBy(sums, after, mean, bins, at, to);
        sumHappened[outcome] =
          (sumHappened[outcome] as number) + chance.bareHappened * (ifHappened[s] as number) * met;
        if (set === 0) sumNot[outcome] = (sumNot[outcome] as number) + chance.bareNot * met;
      }
      after = earlier;
    }
  });
  return { changes: [...found.values()], splits };
}

/** Adds what meets a set after an alteration to what meets the set it was made from. */
function addBack(
  earlier: Float64Array,
  after: Float64Array,
  weight: number,
  mean: Float64Array | undefined,
  { first, count }: Bins,
  at: number,
  to: number,
): void {
  if (weight === 0) return;
  if (mean === undefined)
    for (let i = 0; i < count; i++)
      earlier[at + i] = (earlier[at + i] as number) + weight * (after[to + i] as number);
  else
    for (let i = 0, bin = first; i < count; i++, bin++)
      earlier[at + i] =
        (earlier[at + i] as number) + weight * (mean[bin] as number) * (after[to + i] as number);
}

/** The whole that goes by one step of an alteration, its chance left out. */
function metBy(
  sums: Float64Array,
  after: Float64Array,
  mean: Float64Array | undefined,
  { first, count }: Bins,
  at: number,
  to: number,
): number {
  let met = 0;
  for (let i = 0, bin = first; i < count; i++, bin++) {
    const by = mean === undefined ? 1 : (mean[bin] as number);
    met += (sums[at + i] as number) * (after[to + i] as number) * by;
  }
  return met;
}

function changeLine(
  found: Map<string, ChangeOutcomes>,
  alteration: number,
  changed: number,
  outcome: number,
  outcomes: number,
  bins: number,
): Float64Array {
  const key = `${alteration} ${changed}`;
  const each = found.get(key) ?? {
    alteration,
    changed,
    outcomes: linesTogether(outcomes, bins),
  };
  found.set(key, each);
  return each.outcomes[outcome] as Float64Array;
}

/** What the other parts changed together with one say of the year of a change; undefined if there are none. */
export function othersLine(
  ready: ReadyClique,
  { alteration, changed }: ChangeOutcomes,
  part: number,
): Float64Array | undefined {
  const others = changed & ~(1 << part);
  return others === 0 ? undefined : changedLine(ready.changes, alteration, others);
}

/** The alteration that a change is by. */
export function alterationOf(ready: ReadyClique, each: ChangeOutcomes): Alteration {
  return ready.shape.clique.alterations[each.alteration] as Alteration;
}
