import type { Alteration } from '../knowledge/schema.ts';
import { allowedAt, type Bins } from './layout.ts';
import { alterationLikelihood, alterationShare, type Model } from './model.ts';
import { meanFrom } from './ordinaryTerms.ts';
import type { Look } from './prepareCase.ts';
import type { ReadyPart } from './readyPart.ts';
import type { UnitShape } from './unitShape.ts';
import { binOf } from './yearAxis.ts';

/** How probable an alteration's happening is with its looks, in a period piece and a later one. */
type Chance = { period: [not: number, happened: number]; later: [not: number, happened: number] };

/** Holds one alteration to have happened or not, its looks left out. */
export type Forced = { id: string; happened: boolean };

/** What a unit's alterations can have done: their chances, and what is said of every set of parts one may have changed. */
export type Changes = {
  model: Model;
  shape: UnitShape;
  parts: readonly ReadyPart[];
  chances: readonly Chance[];
  /** By alteration and set of parts: the product of what is said of the parts, by year of the change; and its means. */
  lines: readonly Map<number, Float64Array>[];
  means: readonly Map<number, Float64Array>[];
  earliest: readonly number[];
};

/** Readies the alterations of a unit. */
export function readyChanges(
  model: Model,
  shape: UnitShape,
  parts: readonly ReadyPart[],
  looks: readonly Look[],
  forced?: Forced,
): Changes {
  const { prepared } = model.layout;
  const { alterations } = shape.unit;
  return {
    model,
    shape,
    parts,
    chances: alterations.map((each) => chanceOf(model, each, looks, forced)),
    lines: alterations.map(() => new Map()),
    means: alterations.map(() => new Map()),
    earliest: alterations.map((each) =>
      each.earliest === undefined ? 0 : binOf(prepared.axis, each.earliest),
    ),
  };
}

function chanceOf(model: Model, alteration: Alteration, looks: readonly Look[], forced?: Forced): Chance {
  const { prepared } = model.layout;
  const seen = [false, true].map((happened) =>
    forced?.id === alteration.id
      ? Number(happened === forced.happened)
      : alterationLikelihood(alteration, happened, looks, prepared, model.draw),
  );
  const [period, later] = [true, false].map((kind) => {
    const share = alterationShare(alteration, kind, true, model.draw);
    return [(1 - share) * (seen[0] ?? 1), share * (seen[1] ?? 1)] as [number, number];
  });
  return { period: period ?? [1, 0], later: later ?? [1, 0] };
}

/** One way an alteration can have gone on from a set of changed parts: the parts it changed, and its weight. */
type Step = { from: number; changed: number; weight: number };

/**
 * For every set of parts, how much weight lies on just these having been changed by timed alterations, by bin of the
 * making; the alterations' years are summed out, parts changed by one alteration sharing its year.
 *
 * Method: one alteration after another, each choosing among the parts that none before it has changed.
 *
 * @returns sets × bins, and the same after each alteration but the last, the start first
 */
export function changeSums(
  changes: Changes,
  period: boolean,
  k: number,
  bins: Bins,
): { sums: Float64Array; before: Float64Array[] } {
  const { shape } = changes;
  const size = 2 ** shape.parts.length * bins.count;
  let sums = new Float64Array(size);
  sums.fill(1, 0, bins.count);
  const before: Float64Array[] = [];
  shape.masks.forEach((_, a) => {
    before.push(sums);
    const next = new Float64Array(size);
    eachStep(changes, period, k, a, ({ from, changed, weight }) => {
      const mean = yearMean(changes, a, changed);
      const [at, to] = [from * bins.count, (from | changed) * bins.count];
      if (mean === undefined)
        for (let i = 0; i < bins.count; i++)
          next[to + i] = (next[to + i] as number) + weight * (sums[at + i] as number);
      else
        for (let i = 0, bin = bins.first; i < bins.count; i++, bin++)
          next[to + i] = (next[to + i] as number) + weight * (sums[at + i] as number) * (mean[bin] as number);
    });
    sums = next;
  });
  return { sums, before };
}

/** Every way one alteration can have gone on from the sets that those before it can have left. The step is lent. */
export function eachStep(
  { shape, chances, parts, model }: Changes,
  period: boolean,
  k: number,
  a: number,
  visit: (step: Step) => void,
): void {
  const alteration = shape.unit.alterations[a] as Alteration;
  const [not, ifHappened] = (chances[a] as Chance)[period ? 'period' : 'later'];
  const happened = allowedAt(alteration, k) ? ifHappened : 0;
  const shares = parts.map(({ part }) => model.layout.changeShares[alteration.id]?.[part.kind] ?? 0);
  const mask = shape.masks[a] as number;
  const reached = shape.masks
    .slice(0, a)
    .reduce((all, each, b) => (allowedAt(shape.unit.alterations[b] as Alteration, k) ? all | each : all), 0);
  const step: Step = { from: 0, changed: 0, weight: 0 };
  const weights = happened > 0 ? setWeights(mask, shares) : new Map<number, Float64Array>();
  for (let from = reached; ; from = (from - 1) & reached) {
    const free = mask & ~from;
    step.from = from;
    step.changed = 0;
    const stay = weights.get(free)?.[0] ?? 1;
    step.weight = not + happened * stay;
    if (step.weight !== 0) visit(step);
    if (happened > 0) {
      const ofFree = weights.get(free);
      let index = 0;
      // Sets of the free parts, from none up.
      for (let changed = (0 - free) & free; free !== 0 && changed !== 0; changed = (changed - free) & free) {
        index++;
        step.changed = changed;
        step.weight = happened * (ofFree?.[index] as number);
        if (step.weight !== 0) visit(step);
      }
    }
    if (from === 0) break;
  }
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

/** The mean, over the alteration's possible years from each bin on, of what is said of the parts it changed. */
export function yearMean(changes: Changes, a: number, changed: number): Float64Array | undefined {
  if (changed === 0) return undefined;
  const means = changes.means[a] as Map<number, Float64Array>;
  const known = means.get(changed);
  if (known !== undefined) return known;
  const mean = meanFrom(changes.model, changedLine(changes, a, changed), changes.earliest[a]);
  means.set(changed, mean);
  return mean;
}

/** What is said of each year an alteration may have happened in, by the parts it changed. */
export function changedLine(changes: Changes, a: number, changed: number): Float64Array {
  const lines = changes.lines[a] as Map<number, Float64Array>;
  const known = lines.get(changed);
  if (known !== undefined) return known;
  const top = 31 - Math.clz32(changed);
  const { table, part } = changes.parts[top] as ReadyPart;
  const to = changes.shape.unit.alterations[a]?.changes[part.kind]?.to;
  const own = to === 'improve' ? table.improve : table.repair;
  const rest = changed & ~(1 << top);
  const others = rest === 0 ? undefined : changedLine(changes, a, rest);
  const line = others === undefined ? own : own.map((each, bin) => each * (others[bin] as number));
  lines.set(changed, line);
  return line;
}
