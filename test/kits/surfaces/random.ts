import { drawn } from './drawn.ts';

/** Chance from a seed: the same seed gives the same numbers on every machine. */
export type Random = {
  /** Even between 0 and 1, 1 left out. */
  share: () => number;
  between: (low: number, high: number) => number;
  /** Of the normal distribution with mean 0 and standard deviation 1. */
  normal: () => number;
};

/** A source of chance, from the same stream as `drawn`, begun elsewhere in it. */
export function randomFrom(seed: number): Random {
  const { even, normal } = drawn(Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b));
  return { share: even, between: (low, high) => low + (high - low) * even(), normal };
}
