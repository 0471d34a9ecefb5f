import type { Holding } from './holding.ts';

/** A holding with its place in the list as it was given. */
export type Placed = Holding & { at: number };

/**
 * Holdings from the earliest to the latest, by when each began or else ended; those without any year stay behind the one they were
 * told after.
 */
export function inOrder(holdings: readonly Holding[]): Placed[] {
  let last = Number.NEGATIVE_INFINITY;
  const placed = holdings.map((holding, at) => {
    const year = holding.began?.[0] ?? holding.ended?.[0] ?? holding.ended?.[1];
    if (year !== undefined) last = year;
    return { holding: { ...holding, at }, year: year ?? last };
  });
  return placed
    .toSorted((a, b) => a.year - b.year || a.holding.at - b.holding.at)
    .map(({ holding }) => holding);
}
