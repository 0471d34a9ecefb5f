import type { PartLines } from './readyPart.ts';

/** Which sets of changed parts are alive below a part, whether it can be changed itself, and the run of bins asked for. */
export type Folding = {
  live: Int32Array;
  /** The part's own bit where it can have been changed, else 0. */
  bit: number;
  count: number;
  from: number;
  to: number;
};

/** Fills in a part's factor for one habit class. */
export function fillFactor(
  factor: Float64Array,
  lines: PartLines,
  habitClass: number,
  from: number,
  to: number,
): void {
  const { own, rest } = lines;
  for (let i = from; i < to; i++) factor[i] = (own[i] as number) * habitClass + (rest[i] as number);
}

/** Folds the last part of `held` away: either it was changed, or it has its own factor. */
export function fold(held: Float64Array, into: Float64Array, factor: Float64Array, folding: Folding): void {
  const { live, bit, count, from, to } = folding;
  const skip = bit * count;
  for (let s = 0; s < live.length; s++) {
    const at = (live[s] as number) * count;
    const changed = at + skip;
    if (bit === 0)
      for (let i = from; i < to; i++) into[at + i] = (factor[i] as number) * (held[at + i] as number);
    else
      for (let i = from; i < to; i++)
        into[at + i] = (held[changed + i] as number) + (factor[i] as number) * (held[at + i] as number);
  }
}

/** The same step backwards: `into` takes up what meets `held`; what meets the factor is added to `line` from `lineFrom` on. */
export function unfold(
  into: Float64Array,
  back: Float64Array,
  held: Float64Array,
  factor: Float64Array,
  line: Float64Array,
  lineFrom: number,
  folding: Folding,
): void {
  const { live, bit, count, from, to } = folding;
  const skip = bit * count;
  for (let s = 0; s < live.length; s++) {
    const at = (live[s] as number) * count;
    const changed = at + skip;
    for (let i = from; i < to; i++) {
      const each = back[at + i] as number;
      into[at + i] = (into[at + i] as number) + each * (factor[i] as number);
      line[lineFrom + i] = (line[lineFrom + i] as number) + each * (held[at + i] as number);
    }
    if (bit !== 0)
      for (let i = from; i < to; i++)
        into[changed + i] = (into[changed + i] as number) + (back[at + i] as number);
  }
}
