import type { ReadingId } from '../piece/readings.ts';
import type { Worth } from '../piece/worth.ts';

/** Readings less probable than this need no range: they can hardly move the whole. */
const leastValued = 0.01;

/** A reading as it is asked for: its probability, and its range where the examiner has set one. */
export type AskedReading = { id: ReadingId; probability: number; range?: [number, number] };

/** The readings worth a range, the most probable first, with those that are set, in dollars. */
export function valuesOf(
  readings: readonly { id: ReadingId; probability: number }[],
  worth: Worth,
): AskedReading[] {
  return readings
    .filter(({ id, probability }) => probability >= leastValued || worth.byReading[id] !== undefined)
    .toSorted((a, b) => b.probability - a.probability)
    .map(({ id, probability }) => {
      const { lowCents, highCents } = worth.byReading[id] ?? {};
      return lowCents === undefined || highCents === undefined
        ? { id, probability }
        : { id, probability, range: [lowCents / 100, highCents / 100] };
    });
}

/** What `worth.byReading` is asked, once every reading that is worth one has its range; undefined before. */
export function askedValues(
  readings: readonly AskedReading[],
): { posterior: Record<string, number>; values: Record<string, [number, number]> } | undefined {
  const set = readings.flatMap(({ id, probability, range }) =>
    range === undefined ? [] : [{ id, probability, range }],
  );
  const isWhole = readings.every(
    ({ probability, range }) => range !== undefined || probability < leastValued,
  );
  if (set.length === 0 || !isWhole) return undefined;
  return {
    posterior: Object.fromEntries(set.map(({ id, probability }) => [id, probability])),
    values: Object.fromEntries(set.map(({ id, range }) => [id, range])),
  };
}
