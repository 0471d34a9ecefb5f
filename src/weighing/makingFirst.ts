import { type MakingKind, makingKinds, type ReadingId, readingsOfMaking } from '../piece/readings.ts';
import { firmness } from './firmness.ts';
import type { PartStanding, Weighing } from './weighing.ts';

/** How probable each answer to how the piece came to be is, from the probabilities of the readings. */
export function makingShares(readings: Readonly<Record<ReadingId, number>>): Record<MakingKind, number> {
  return Object.fromEntries(
    makingKinds.map((kind) => [kind, readingsOfMaking[kind].reduce((sum, id) => sum + readings[id], 0)]),
  ) as Record<MakingKind, number>;
}

/** The most probable answer; the earlier listed wins a tie. */
export function leadingMaking(shares: Readonly<Record<MakingKind, number>>): MakingKind {
  return makingKinds.reduce((best, kind) => (shares[kind] > shares[best] ? kind : best), makingKinds[0]);
}

/** Told of the redraws: the middle 90 % of each answer, and in what share of them the leading one leads. */
export type MakingRedraws = { intervals: Record<MakingKind, [number, number]>; shareLeading: number };

/** The making first: each answer with its range, the leading one and whether it is settled. */
export function makingFirst(
  shares: Readonly<Record<MakingKind, number>>,
  drawn: MakingRedraws,
  grounds: { looks: number; photoOnly: boolean; clashes: boolean; draws: number },
  shown: (probability: number) => number,
  isConsidered: (reading: ReadingId) => boolean,
): Weighing['making'] {
  const leading = leadingMaking(shares);
  return {
    answers: makingKinds
      .map((id) => ({
        id,
        probability: shown(shares[id]),
        low: shown(grounds.draws === 0 ? shares[id] : drawn.intervals[id][0]),
        high: shown(grounds.draws === 0 ? shares[id] : drawn.intervals[id][1]),
        ...(readingsOfMaking[id].some(isConsidered) ? {} : { considered: false as const }),
      }))
      .sort((a, b) => shares[b.id] - shares[a.id]),
    leading,
    ...firmness({
      ...grounds,
      probability: shares[leading],
      shareLeading: drawn.shareLeading,
      low: drawn.intervals[leading][0],
    }),
  };
}

/**
 * The condition second, for the piece if it is of the period: how probable each is then, how many of the parts looked at are
 * still those of the making, and how many of the parts not looked at are to be expected later.
 */
export function conditionOf(
  readings: Readonly<Record<ReadingId, number>>,
  parts: readonly PartStanding[],
): Weighing['condition'] {
  const ids = readingsOfMaking['of-the-period'];
  const total = ids.reduce((sum, id) => sum + readings[id], 0);
  const seen = parts.filter((part) => part.standing !== 'not-looked-at');
  const unseen = parts.filter((part) => part.standing === 'not-looked-at');
  const later = (part: PartStanding) => 1 - (part.origin['of-the-making'] ?? 1);
  return {
    ifOfThePeriod: ids.map((id) => ({ id, share: total > 0 ? readings[id] / total : 0 })),
    seen: { parts: seen.length, original: seen.filter((part) => part.standing === 'of-the-making').length },
    unseen: { parts: unseen.length, laterExpected: unseen.reduce((sum, part) => sum + later(part), 0) },
  };
}
