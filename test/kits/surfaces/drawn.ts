import { normalDraw } from '../../../src/ground/seededRandom.ts';

/** Numbers as if by chance, the same for the same seed (mulberry32): evenly from 0 to below 1, and normal by Box and Muller. */
export function drawn(seed: number): { even: () => number; normal: () => number } {
  const state = { at: seed >>> 0 };
  const even = () => {
    state.at = (state.at + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state.at ^ (state.at >>> 15), state.at | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => normalDraw(even);
  return { even, normal };
}
