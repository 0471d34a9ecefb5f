/**
 * Lines of numbers without the cost of a piece of memory for each: in a browser a small one costs some thousand times what is then
 * reckoned in it, and fresh memory is slow when it is first written to.
 */

const blockLength = 1 << 14;
let block = new Float64Array(0);
let taken = 0;

/** A line of noughts, to keep; it stands in a block with others. */
export function noughts(length: number): Float64Array {
  if (length > blockLength / 4) return new Float64Array(length);
  if (taken + length > block.length) {
    block = new Float64Array(blockLength);
    taken = 0;
  }
  taken += length;
  return block.subarray(taken - length, taken);
}

/** So many lines of noughts, to keep. */
export function linesTogether(lines: number, length: number): Float64Array[] {
  const all = noughts(lines * length);
  return Array.from({ length: lines }, (_, index) => all.subarray(index * length, (index + 1) * length));
}

/** Gives lines of noughts that may be used until the call that asked for them is over. */
export type Lend = (length: number) => Float64Array;

let room = new Float64Array(1 << 16);
let lent = 0;

/** Calls a function with memory that is used again as soon as the function is over: nothing of it may be kept. */
export function withRoom<Answer>(use: (lend: Lend) => Answer): Answer {
  const before = lent;
  try {
    return use(lend);
  } finally {
    lent = before;
  }
}

function lend(length: number): Float64Array {
  // Who holds lines of the smaller room keeps them; it goes when they do.
  if (lent + length > room.length) room = new Float64Array(2 * (lent + length));
  lent += length;
  return room.subarray(lent - length, lent).fill(0);
}
