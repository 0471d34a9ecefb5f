import type { Making as MakingFile } from '../knowledge/schema.ts';
import { type PieceHistory, pieceHistories, readingsOfHistory } from '../piece/observation.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { ObservationToWeigh } from './caseToWeigh.ts';
import type { Draw } from './figures.ts';

/** How probable something seen is under each reading, in proportion. */
export type ReadingWeights = Record<ReadingId, number>;

/** No observation outside the signs counts for more than this, one reading against another. */
export const mostOfObservation = 10;

/** How probable an examiner's own observation is under each reading, brought within 10 : 1 of the best. */
export function observationWeights(
  { expected }: ObservationToWeigh,
  making: MakingFile,
  draw: Draw,
): ReadingWeights {
  return overReadings((history) => draw(making.expected[expected[history]]), mostOfObservation);
}

/** How probable it is under each reading that who looked the piece over for mends, later parts and changes found none. */
export function lookedOverWeights(making: MakingFile, draw: Draw): ReadingWeights {
  return overReadings((history) => draw(making.lookedOver[history]), Number.POSITIVE_INFINITY);
}

/** Several weights multiplied. */
export function timesWeights(all: readonly ReadingWeights[]): ReadingWeights {
  return byReading((id) => all.reduce((product, each) => product * each[id], 1));
}

function overReadings(share: (history: PieceHistory) => number, most: number): ReadingWeights {
  const shares = new Map<ReadingId, number>(
    pieceHistories.flatMap((history) => {
      const value = share(history);
      return readingsOfHistory[history].map((id) => [id, value] as const);
    }),
  );
  const least = Math.max(...shares.values()) / most;
  return byReading((id) => Math.max(least, shares.get(id) ?? 0));
}

function byReading(of: (id: ReadingId) => number): ReadingWeights {
  return Object.fromEntries(readingIds.map((id) => [id, of(id)])) as ReadingWeights;
}
