import type { Look } from '../evidence/preparedCase.ts';
import { binOf } from '../evidence/yearAxis.ts';
import type { Alteration } from '../knowledge/schema.ts';
import { stepsOf } from './changeSteps.ts';
import type { Bins, CliqueShape } from './layout.ts';
import { noughts } from './memory.ts';
import { alterationLikelihood, alterationShare, type Model, type PieceKind } from './model.ts';
import { meanFrom } from './ordinaryTerms.ts';
import type { ReadyPart } from './readyPart.ts';

/** How probable it is that an alteration did not happen, and that it did, with its looks and without. */
export type Chance = { not: number; happened: number; bareNot: number; bareHappened: number };

/** What a clique's alterations can have done: their chances, and what is said of every set of parts one may have changed. */
export type Changes = {
  model: Model;
  shape: CliqueShape;
  parts: readonly ReadyPart[];
  chances: Record<PieceKind, readonly Chance[]>;
  /** By alteration and set of parts: the product of what is said of the parts, by year of the change; and its means. */
  lines: readonly Map<number, Float64Array>[];
  means: readonly Map<number, Float64Array>[];
  earliest: readonly number[];
};

/** Readies the alterations of a clique. */
export function readyChanges(
  model: Model,
  shape: CliqueShape,
  parts: readonly ReadyPart[],
  looks: readonly Look[],
): Changes {
  const { prepared } = model.layout;
  const { alterations } = shape.clique;
  return {
    model,
    shape,
    parts,
    chances: chancesOf(model, alterations, looks),
    lines: alterations.map(() => new Map()),
    means: alterations.map(() => new Map()),
    earliest: alterations.map((each) =>
      each.earliest === undefined ? 0 : binOf(prepared.axis, each.earliest),
    ),
  };
}

function chancesOf(
  model: Model,
  alterations: readonly Alteration[],
  looks: readonly Look[],
): Changes['chances'] {
  const seen = alterations.map((each) =>
    [false, true].map((happened) =>
      alterationLikelihood(each, happened, looks, model.layout.prepared, model.draw),
    ),
  );
  const of = (kind: PieceKind) =>
    alterations.map((each, a): Chance => {
      const share = alterationShare(each, kind, true, model.draw);
      const [ifNot = 1, ifSo = 1] = seen[a] ?? [];
      return { not: (1 - share) * ifNot, happened: share * ifSo, bareNot: 1 - share, bareHappened: share };
    });
  return { period: of('period'), later: of('later'), 'to-deceive': of('to-deceive') };
}

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
  kind: PieceKind,
  k: number,
  bins: Bins,
): { sums: Float64Array; before: Float64Array[] } {
  const { shape } = changes;
  const size = 2 ** shape.parts.length * bins.count;
  let sums = noughts(size);
  sums.fill(1, 0, bins.count);
  const before: Float64Array[] = [];
  shape.masks.forEach((_, a) => {
    before.push(sums);
    const next = noughts(size);
    const { from, changed, ifHappened } = stepsOf(shape, k, a);
    const { not, happened } = changes.chances[kind][a] as Chance;
    for (let s = 0; s < from.length; s++) {
      const set = changed[s] as number;
      const weight = happened * (ifHappened[s] as number) + (set === 0 ? not : 0);
      if (weight === 0) continue;
      const at = (from[s] as number) * bins.count;
      const to = ((from[s] as number) | set) * bins.count;
      const mean = yearMean(changes, a, set);
      if (mean === undefined)
        for (let i = 0; i < bins.count; i++)
          next[to + i] = (next[to + i] as number) + weight * (sums[at + i] as number);
      else
        for (let i = 0, bin = bins.first; i < bins.count; i++, bin++)
          next[to + i] = (next[to + i] as number) + weight * (sums[at + i] as number) * (mean[bin] as number);
    }
    sums = next;
  });
  return { sums, before };
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
  const to = changes.shape.clique.alterations[a]?.changes[part.kind]?.to;
  const own = to === 'improve' ? table.improve : table.repair;
  const rest = changed & ~(1 << top);
  const others = rest === 0 ? undefined : changedLine(changes, a, rest);
  const line = others === undefined ? own : noughts(own.length);
  if (others !== undefined)
    for (let bin = 0; bin < line.length; bin++) line[bin] = (own[bin] as number) * (others[bin] as number);
  lines.set(changed, line);
  return line;
}
