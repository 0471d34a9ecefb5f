import { massBetween, type YearCurve } from './yearCurve.ts';

/**
 * The shortest span of years that holds a share of a density with one hump.
 *
 * Method: the level is lowered until the years above it hold the share. Where the density is level at that height, the
 * span is cut back evenly at the ends that lie on the level. Where a sum has several humps, the span runs from the first
 * year above the level to the last, and the curve shows the gap.
 *
 * @param share  0–1
 * @returns years, not rounded
 * @source ours: the usual definition of a highest-density interval, with the cutting back for level tops
 */
export function highestDensity(curve: YearCurve, share: number): [number, number] {
  const ends = curve.masses.map((_, cell): Ends => {
    const [start, end] = [curve.edges[cell] as number, curve.edges[cell + 1] as number];
    return [curve.height(cell, start), curve.height(cell, end)];
  });
  let [low, high] = [0, ends.reduce((most, each) => Math.max(most, ...each), 0)];
  for (let step = 0; step < 100 && high - low > 1e-14 * high; step++) {
    const level = (low + high) / 2;
    if (above(curve, ends, level).mass >= share) low = level;
    else high = level;
  }
  const { from, to, mass } = above(curve, ends, low);
  return cutBack(curve, [from, to], mass - share, low);
}

/** Heights at the two ends of a cell. */
type Ends = readonly [number, number];

type Above = { from: number; to: number; mass: number };

/** The years at which the density is at or above a level, and what they hold. */
function above(curve: YearCurve, ends: readonly Ends[], level: number): Above {
  const found: Above = { from: Number.POSITIVE_INFINITY, to: Number.NEGATIVE_INFINITY, mass: 0 };
  curve.masses.forEach((whole, cell) => {
    const [first, last] = ends[cell] as Ends;
    if (first < level && last < level) return;
    const [start, end] = [curve.edges[cell] as number, curve.edges[cell + 1] as number];
    const from = first >= level ? start : crossing(curve, cell, level, start, end);
    const to = last >= level ? end : crossing(curve, cell, level, end, start);
    found.mass += from === start && to === end ? whole : massBetween(curve, cell, from, to);
    found.from = Math.min(found.from, from);
    found.to = Math.max(found.to, to);
  });
  return found;
}

/** Where the density crosses a level on the way from a year below it to one above. */
function crossing(curve: YearCurve, cell: number, level: number, below: number, over: number): number {
  let [under, upon] = [below, over];
  for (let step = 0; step < 60; step++) {
    const middle = (under + upon) / 2;
    if (curve.height(cell, middle) < level) under = middle;
    else upon = middle;
  }
  return upon;
}

/** Takes what is too much off the level stretches at the ends of a span. */
function cutBack(
  curve: YearCurve,
  [from, to]: readonly [number, number],
  excess: number,
  level: number,
): [number, number] {
  if (!(excess > 1e-9) || level <= 0) return [from, to];
  const [atStart, atEnd] = [levelFrom(curve, from, level, 1), levelFrom(curve, to, level, -1)];
  const years = excess / level;
  const both = Math.min(atStart, atEnd, years / 2);
  const rest = years - 2 * both;
  const first = both + Math.min(rest, Math.max(0, atStart - both));
  const last = both + Math.min(Math.max(0, rest - (first - both)), Math.max(0, atEnd - both));
  return first + last >= to - from ? [from, to] : [from + first, to - last];
}

/** For how many years inward from an end of the span the density stays at the level. */
function levelFrom(curve: YearCurve, end: number, level: number, way: 1 | -1): number {
  const cells = curve.masses.map((_, cell) => cell);
  const near = (height: number) => Math.abs(height - level) <= 1e-9 * level;
  let at = end;
  for (const cell of way === 1 ? cells : cells.reverse()) {
    const [start, stop] = [curve.edges[cell] as number, curve.edges[cell + 1] as number];
    const exit = way === 1 ? stop : start;
    if ((exit - at) * way <= 1e-9) continue;
    if (!near(curve.height(cell, at)) || !near(curve.height(cell, exit))) break;
    at = exit;
  }
  return Math.abs(at - end);
}
