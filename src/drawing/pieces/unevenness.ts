/**
 * A row of shares from 0 to 1 that looks irregular and is the same each time: hand work drawn without chance.
 *
 * @param seed any number; the same seed gives the same row
 */
export function unevenness(seed: number): () => number {
  let state = (Math.round(Math.abs(seed) * 100) + 1) % 2147483647;
  const next = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  // The first shares of neighboring seeds lie close together.
  for (let skipped = 0; skipped < 4; skipped++) next();
  return next;
}

/** A length as it is written in path data: two decimals at most. */
export const short = (value: number): number => Math.round(value * 100) / 100;

/** Places from the beginning to the end of a length, the same distance apart, with half of it at both ends. */
export function evenly(from: number, length: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => from + ((index + 0.5) * length) / count);
}
