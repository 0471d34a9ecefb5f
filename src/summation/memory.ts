/**
 * Lines of numbers without the cost of a piece of memory for each: in a browser a small one costs some thousand times what is then
 * reckoned in it, and fresh memory is slow when it is first written to.
 */

/** Gives lines of noughts that may be used until the call that asked for them is over. */
export type Lend = (length: number) => Float64Array;

const blockLength = 1 << 14;

/** The memory of a thread. It holds no answers: what is reckoned in it is the same wherever it lies. */
class Memory {
  #block = new Float64Array(0);
  #taken = 0;
  #room = new Float64Array(1 << 16);
  #lent = 0;

  take(length: number): Float64Array {
    if (length > blockLength / 4) return new Float64Array(length);
    if (this.#taken + length > this.#block.length) {
      this.#block = new Float64Array(blockLength);
      this.#taken = 0;
    }
    this.#taken += length;
    return this.#block.subarray(this.#taken - length, this.#taken);
  }

  lendTo<Answer>(use: (lend: Lend) => Answer): Answer {
    const before = this.#lent;
    try {
      return use((length) => this.#lend(length));
    } finally {
      this.#lent = before;
    }
  }

  #lend(length: number): Float64Array {
    // Who holds lines of the smaller room keeps them; it goes when they do.
    if (this.#lent + length > this.#room.length) this.#room = new Float64Array(2 * (this.#lent + length));
    this.#lent += length;
    return this.#room.subarray(this.#lent - length, this.#lent).fill(0);
  }
}

const ofThread = new Memory();

/** A line of noughts, to keep; it stands in a block with others. */
export function noughts(length: number): Float64Array {
  return ofThread.take(length);
}

/** So many lines of noughts, to keep. */
export function linesTogether(lines: number, length: number): Float64Array[] {
  const all = noughts(lines * length);
  return Array.from({ length: lines }, (_, index) => all.subarray(index * length, (index + 1) * length));
}

/** Calls a function with memory that is used again as soon as the function is over: nothing of it may be kept. */
export function withRoom<Answer>(use: (lend: Lend) => Answer): Answer {
  return ofThread.lendTo(use);
}
