/**
 * How the numbers of a clique are kept and reckoned with. Two ways give the same answers: plain numbers with a
 * running scale, which is fast; and logarithms, which never run out of range.
 */
export type Arithmetic = {
  /** A clique of `length` entries that says nothing yet. */
  fresh(length: number): Float64Array;
  /** Multiplies plain numbers in, read at base + offset. True if a product left the range that can be held. */
  takeTable(entries: Float64Array, values: ArrayLike<number>, offsets: Int32Array, base: number): boolean;
  /** Multiplies a message in. True if a product left the range that can be held. */
  takeMessage(entries: Float64Array, message: Float64Array, offsets: Int32Array): boolean;
  /** Brings the largest entry to 1 and returns the natural log of what was taken out; −Infinity if nothing is left. */
  settle(entries: Float64Array): number;
  /** Sums entries that share an offset. */
  sum(entries: Float64Array, offsets: Int32Array, length: number): Float64Array;
  /** Entry by entry; nothing over nothing is nothing. */
  divide(over: Float64Array, under: Float64Array): Float64Array;
  /** Shares that sum to 1. */
  shares(entries: Float64Array): number[];
};
