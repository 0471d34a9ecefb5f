import { boundsOf, type DatedSign } from './datedSign.ts';
import { highestDensity } from './highestDensity.ts';
import {
  densityByYear,
  meanAndSd,
  shareBefore,
  type Together,
  type YearCurve,
  yearAtShare,
  yearCurve,
} from './yearCurve.ts';

/** A dated sign and what it is called. */
export type NamedSign = DatedSign & { name: string };

/** The years that signs leave, or the pairs of signs that can't be of one date. */
export type DatingSpan =
  | {
      possible: true;
      p50: [number, number];
      p90: [number, number];
      median: number;
      mean: number;
      sd: number;
      /** [year, share a year], whole years rising. */
      density: [number, number][];
      /** [share, the year before which that share lies], for the shares asked for. */
      quantiles: [number, number][];
      /** The share between each two of the years asked for. */
      bins: { from: number; to: number; share: number }[];
      /** The integral of the product of the signs' own densities; undefined where one has an open end, or they are a mix. */
      overlap: number | undefined;
      /** The signs without which an end of p90 would reach further out, those that hold most first. */
      binding: { sign: string; end: 'from' | 'to'; byYears: number }[];
    }
  | { possible: false; conflicts: { notBefore: string; from: number; notAfter: string; to: number }[] };

/** Less than this, in years, is no holding back. */
const leastHeld = 1;

/**
 * When a piece was made, by the signs on it that came into use and went out.
 *
 * @param signs     with their spans; all on one thing, or, with `together.way` sum, on a mix of things
 * @param years     the years that counted alike before the signs: [from, to]
 * @param together  how to put them together
 * @param also      shares (0–1) whose years are wanted, and rising years between which shares are wanted
 * @source see `yearCurve` and `highestDensity`; binding signs: ours
 */
export function datingSpan(
  signs: readonly NamedSign[],
  years: readonly [number, number],
  together: Together = { way: 'product' },
  also: { shares?: readonly number[] | undefined; edges?: readonly number[] | undefined } = {},
): DatingSpan {
  const curve = yearCurve(signs, years, together);
  if (curve === undefined) return { possible: false, conflicts: conflictsOf(signs, years) };
  const p90 = highestDensity(curve, 0.9);
  return {
    possible: true,
    p50: highestDensity(curve, 0.5),
    p90,
    median: yearAtShare(curve, 0.5),
    ...meanAndSd(curve),
    density: densityByYear(curve),
    quantiles: (also.shares ?? []).map((share) => [share, yearAtShare(curve, share)]),
    bins: binsOf(curve, also.edges ?? []),
    overlap: together.way === 'product' ? overlapOf(signs, curve.whole) : undefined,
    binding: bindingSigns(signs, p90, (kept) => without(signs, kept, years, together)),
  };
}

/** What the years would be without one sign. */
function without(
  signs: readonly NamedSign[],
  left: number,
  years: readonly [number, number],
  together: Together,
): YearCurve | undefined {
  const kept = <T>(list: readonly T[]) => list.filter((_, index) => index !== left);
  return yearCurve(
    kept(signs),
    years,
    together.way === 'sum' ? { way: 'sum', weights: kept(together.weights) } : together,
  );
}

function bindingSigns(
  signs: readonly NamedSign[],
  [from, to]: readonly [number, number],
  curveWithout: (index: number) => YearCurve | undefined,
): { sign: string; end: 'from' | 'to'; byYears: number }[] {
  const moves = signs.flatMap(({ name }, index) => {
    const curve = curveWithout(index);
    if (curve === undefined) return [];
    const [first, last] = highestDensity(curve, 0.9);
    return [
      { sign: name, end: 'from' as const, byYears: from - first },
      { sign: name, end: 'to' as const, byYears: last - to },
    ];
  });
  return (['from', 'to'] as const).flatMap((end) =>
    moves
      .filter((move) => move.end === end && move.byYears >= leastHeld)
      .sort((a, b) => b.byYears - a.byYears),
  );
}

/** The pairs, of signs and the years given before, that leave no year between them. */
function conflictsOf(signs: readonly NamedSign[], [from, to]: readonly [number, number]) {
  const bounds = [
    ...signs.map((sign) => ({ name: sign.name, ...boundsOf(sign) })),
    { name: 'the years given as prior', from, to },
  ];
  return bounds.flatMap((early) =>
    bounds
      .filter((late) => late !== early && late.from >= early.to)
      .map((late) => ({ notBefore: late.name, from: late.from, notAfter: early.name, to: early.to })),
  );
}

function binsOf(curve: YearCurve, edges: readonly number[]): { from: number; to: number; share: number }[] {
  return edges.slice(1).map((to, index) => {
    const from = edges[index] as number;
    return { from, to, share: shareBefore(curve, to) - shareBefore(curve, from) };
  });
}

/** The whole of the product over the wholes of the trapezoids, each (latest + commonUntil − earliest − commonFrom) / 2. */
function overlapOf(signs: readonly NamedSign[], whole: number): number | undefined {
  let overlap = whole;
  for (const { earliest, commonFrom = earliest, latest, commonUntil = latest, outside = 0 } of signs) {
    if (earliest === undefined || commonFrom === undefined || outside > 0) return undefined;
    if (latest === undefined || commonUntil === undefined) return undefined;
    overlap /= (latest + commonUntil - earliest - commonFrom) / 2;
  }
  return Number.isFinite(overlap) ? overlap : undefined;
}
