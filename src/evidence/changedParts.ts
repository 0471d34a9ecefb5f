import type { Alteration } from '../knowledge/schema.ts';
import type { Model } from './model.ts';
import { meanFrom } from './ordinaryTerms.ts';
import type { ReadyPart } from './readyPart.ts';
import { binOf } from './yearAxis.ts';

/** Means over an alteration's years, kept by alteration and by the set of parts it changed (a bit a part). */
export type YearMeans = Map<number, Float64Array>[];

/** One way the happened alterations can have fallen: which parts each changed (a bit a part), and its weight by bin. */
export type Leaf = { changed: readonly number[]; product: Float64Array; scale: number };

/**
 * What is common to all classes of a unit: its parts made ready, its alterations, and the means over their years.
 * `scratch` is room for one line a part and one more; a sum lends it out and takes it back.
 */
export type Changing = {
  model: Model;
  parts: readonly ReadyPart[];
  alterations: readonly Alteration[];
  means: YearMeans;
  scratch: Float64Array[];
};

/**
 * Fills `total` with the sum over which happened alteration changed which part and over the alterations' years.
 *
 * @param lines     each part's factor over the bins if no timed alteration changed it
 * @param happened  indices into the alterations
 */
export function fillOverChanges(
  total: Float64Array,
  changing: Changing,
  lines: readonly Float64Array[],
  happened: readonly number[],
  bins: { first: number; count: number },
): void {
  const { count, first } = bins;
  for (let i = 0; i < count; i++) total[i] = 0;
  eachChange(changing, lines, happened, count, ({ changed, product, scale }) => {
    let by: Float64Array | undefined;
    for (const a of happened) {
      const mean = yearMean(changing, a, changed[a] as number);
      if (mean !== undefined)
        by = by === undefined ? mean : by.map((each, bin) => each * (mean[bin] as number));
    }
    if (by === undefined)
      for (let i = 0; i < count; i++) total[i] = (total[i] as number) + (product[i] as number) * scale;
    else
      for (let i = 0; i < count; i++)
        total[i] = (total[i] as number) + (product[i] as number) * scale * (by[first + i] as number);
  });
}

/** Goes through every way the happened alterations can have fallen on the parts. The leaf is lent, not given. */
export function eachChange(
  changing: Changing,
  lines: readonly Float64Array[],
  happened: readonly number[],
  count: number,
  leaf: (leaf: Leaf) => void,
): void {
  const { parts, alterations, scratch } = changing;
  const base = scratch[0] as Float64Array;
  for (let i = 0; i < count; i++) base[i] = 1;
  const branches: number[] = [];
  parts.forEach((ready, part) => {
    const line = lines[part] as Float64Array;
    if (canBranch(changing, ready, happened)) branches.push(part);
    else {
      const left = shareLeft(changing, ready, happened);
      for (let i = 0; i < count; i++) base[i] = (base[i] as number) * (line[i] as number) * left;
    }
  });
  const changed = alterations.map(() => 0);
  const go = (depth: number, product: Float64Array, scale: number) => {
    const part = branches[depth];
    if (part === undefined) {
      leaf({ changed, product, scale });
      return;
    }
    const ready = parts[part] as ReadyPart;
    let left = scale;
    for (const a of happened) {
      const share = changeShareOf(changing, a, ready);
      if (share === undefined) continue;
      if (!ready.restricted || ready.byAlteration === alterations[a]?.id) {
        changed[a] = (changed[a] as number) | (1 << part);
        go(depth + 1, product, left * share);
        changed[a] = (changed[a] as number) & ~(1 << part);
      }
      left *= 1 - share;
    }
    const next = scratch[depth + 1] as Float64Array;
    const line = lines[part] as Float64Array;
    for (let i = 0; i < count; i++) next[i] = (product[i] as number) * (line[i] as number);
    go(depth + 1, next, left);
  };
  go(0, base, 1);
}

/** A part without looks that may be anything need not branch: changed or not, nothing is said of it. */
function canBranch(changing: Changing, ready: ReadyPart, happened: readonly number[]): boolean {
  return (
    (ready.looked || ready.restricted) &&
    happened.some((a) => changeShareOf(changing, a, ready) !== undefined)
  );
}

/** For a part that does not branch: what is left to it. All, unless a restriction keeps the alterations off it. */
function shareLeft(changing: Changing, ready: ReadyPart, happened: readonly number[]): number {
  if (!ready.restricted) return 1;
  return happened.reduce((left, a) => left * (1 - (changeShareOf(changing, a, ready) ?? 0)), 1);
}

function changeShareOf({ model, alterations }: Changing, a: number, ready: ReadyPart): number | undefined {
  return model.layout.changeShares[alterations[a]?.id ?? '']?.[ready.part.kind];
}

/** The mean, over the alteration's possible years from each bin on, of what the looks at the parts it changed say. */
export function yearMean(changing: Changing, index: number, changed: number): Float64Array | undefined {
  if (changed === 0) return undefined;
  const known = changing.means[index]?.get(changed);
  if (known !== undefined) return known;
  const { model, alterations } = changing;
  const earliest = alterations[index]?.earliest;
  const { axis } = model.layout.prepared;
  const mean = meanFrom(
    model,
    changedLine(changing, index, changed),
    earliest === undefined ? 0 : binOf(axis, earliest),
  );
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
    const { improve, repair } = ready.table;
    const by = alterations[index]?.changes[ready.part.kind]?.to === 'improve' ? improve : repair;
    for (let i = 0; i < line.length; i++) line[i] = (line[i] as number) * (by[i] as number);
  });
  return line;
}
