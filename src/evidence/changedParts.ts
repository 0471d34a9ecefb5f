import type { Alteration } from '../knowledge/schema.ts';
import type { Model } from './model.ts';
import { changeShare, meanFrom } from './ordinaryTerms.ts';
import type { ReadyPart } from './readyPart.ts';
import { binOf } from './yearAxis.ts';

/** Means over an alteration's years, kept by alteration and by the set of parts it changed (a bit a part). */
export type YearMeans = Map<number, Float64Array>[];

/** A part that a happened alteration may have changed: with which share each, and with which share none did. */
type Branch = {
  part: number;
  line: Float64Array;
  changes: { alteration: number; share: number }[];
  left: number;
};

/** One way the happened alterations can have fallen: which parts each changed (a bit a part), and its weight by bin. */
export type Leaf = { changed: readonly number[]; product: Float64Array; scale: number };

/** What is common to all columns of a unit: its parts made ready, its alterations, and the means over their years. */
export type Changing = {
  model: Model;
  parts: readonly ReadyPart[];
  alterations: readonly Alteration[];
  means: YearMeans;
};

/**
 * Sums, over the given bins of the making, over which happened alteration changed which part and over the alterations'
 * years.
 *
 * @param lines     each part's factor over the bins if no timed alteration changed it
 * @param happened  indices into the alterations
 */
export function sumOverChanges(
  changing: Changing,
  lines: readonly Float64Array[],
  happened: readonly number[],
  bins: { first: number; count: number },
): Float64Array {
  const total = new Float64Array(bins.count);
  eachChange(changing, lines, happened, bins.count, ({ changed, product, scale }) => {
    const factors = happened.flatMap((a) => yearMean(changing, a, changed[a] as number) ?? []);
    for (let i = 0; i < total.length; i++) {
      let value = (product[i] as number) * scale;
      for (const factor of factors) value *= factor[bins.first + i] as number;
      total[i] = (total[i] as number) + value;
    }
  });
  return total;
}

/** Goes through every way the happened alterations can have fallen on the parts. The leaf is lent, not given. */
export function eachChange(
  { parts, alterations }: Changing,
  lines: readonly Float64Array[],
  happened: readonly number[],
  count: number,
  leaf: (leaf: Leaf) => void,
): void {
  const base = new Float64Array(count).fill(1);
  const branches: Branch[] = [];
  parts.forEach((ready, part) => {
    const branch = branchOf(ready, part, lines[part] as Float64Array, alterations, happened);
    if (branch.changes.length > 0) branches.push(branch);
    else multiply(base, branch.line, branch.left);
  });
  const scratch = branches.map(() => new Float64Array(count));
  const changed = alterations.map(() => 0);
  const go = (depth: number, product: Float64Array, scale: number) => {
    const branch = branches[depth];
    if (branch === undefined) {
      leaf({ changed, product, scale });
      return;
    }
    for (const { alteration, share } of branch.changes) {
      changed[alteration] = (changed[alteration] as number) | (1 << branch.part);
      go(depth + 1, product, scale * share);
      changed[alteration] = (changed[alteration] as number) & ~(1 << branch.part);
    }
    const next = scratch[depth] as Float64Array;
    for (let i = 0; i < next.length; i++) next[i] = (product[i] as number) * (branch.line[i] as number);
    go(depth + 1, next, scale * branch.left);
  };
  go(0, base, 1);
}

/** Alterations choose in order: each takes its share of what the earlier left. */
function branchOf(
  ready: ReadyPart,
  part: number,
  line: Float64Array,
  alterations: readonly Alteration[],
  happened: readonly number[],
): Branch {
  const branch: Branch = { part, line, changes: [], left: 1 };
  for (const alteration of happened) {
    const each = alterations[alteration] as Alteration;
    const change = each.changes[ready.part.kind];
    if (change === undefined) continue;
    const share = changeShare(change.in100);
    const may = !ready.restricted || ready.byAlteration === each.id;
    // A part without looks that may be anything: both ways say the same of it, so it need not branch.
    if (may && !ready.looked && !ready.restricted) continue;
    if (may) branch.changes.push({ alteration, share: branch.left * share });
    branch.left *= 1 - share;
  }
  return branch;
}

/** The mean, over the alteration's possible years from each bin on, of what the looks at the parts it changed say. */
export function yearMean(changing: Changing, index: number, changed: number): Float64Array | undefined {
  if (changed === 0) return undefined;
  const known = changing.means[index]?.get(changed);
  if (known !== undefined) return known;
  const { model, alterations } = changing;
  const alteration = alterations[index] as Alteration;
  const { axis } = model.layout.prepared;
  const earliest = alteration.earliest === undefined ? 0 : binOf(axis, alteration.earliest);
  const mean = meanFrom(model, changedLine(changing, index, changed), earliest);
  changing.means[index]?.set(changed, mean);
  return mean;
}

/** What the looks at the parts an alteration changed say of each year it may have happened in. */
export function changedLine(
  { model, parts, alterations }: Changing,
  index: number,
  changed: number,
): Float64Array {
  const line = new Float64Array(model.layout.prepared.axis.bins).fill(1);
  parts.forEach((ready, part) => {
    if ((changed & (1 << part)) === 0) return;
    multiply(
      line,
      alterations[index]?.changes[ready.part.kind]?.to === 'improve'
        ? ready.table.improve
        : ready.table.repair,
      1,
    );
  });
  return line;
}

function multiply(line: Float64Array, by: Float64Array, scale: number): void {
  for (let i = 0; i < line.length; i++) line[i] = (line[i] as number) * (by[i] as number) * scale;
}
