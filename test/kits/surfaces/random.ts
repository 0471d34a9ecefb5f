/** Chance from a seed: the same seed gives the same numbers on every machine. */
export type Random = {
  /** Even between 0 and 1, 1 left out. */
  share: () => number;
  between: (low: number, high: number) => number;
  /** Of the normal distribution with mean 0 and standard deviation 1. */
  normal: () => number;
};

/**
 * A source of chance.
 *
 * @source the mixing steps known as mulberry32 (from memory); normal by Box and Muller
 */
export function randomFrom(seed: number): Random {
  let state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) >>> 0;
  const share = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    share,
    between: (low, high) => low + (high - low) * share(),
    normal: () => Math.sqrt(-2 * Math.log(1 - share())) * Math.cos(2 * Math.PI * share()),
  };
}
