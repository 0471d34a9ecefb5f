import { counted } from '../ground/words.ts';
import { contentHash } from '../knowledge/contentHash.ts';
import { ownNamesOnly } from '../knowledge/ownNamesOnly.ts';
import type { Knowledge, Sign } from '../knowledge/schema.ts';
import { settledFigure } from '../knowledge/settledFigure.ts';
import type { FigureCount } from './expectedCounts.ts';

/** What one settled case counts, kept by its piece so that it can be taken out. */
export type CountedCase = { piece: string; counts: readonly FigureCount[] };

/**
 * The knowledge with the figures of its signs moved by settled cases; the same knowledge where there are none. Its version tells
 * which counts were taken in.
 */
export function learnedKnowledge(knowledge: Knowledge, cases: readonly CountedCase[]): Knowledge {
  const taken = cases.filter(({ counts }) => counts.length > 0);
  if (taken.length === 0) return knowledge;
  const bySign = new Map<string, Map<string, { seen: number; of: number; cases: number }>>();
  for (const { counts } of taken)
    for (const { sign, state, seen, of } of counts) {
      const states = bySign.get(sign) ?? new Map<string, { seen: number; of: number; cases: number }>();
      const before = states.get(state) ?? { seen: 0, of: 0, cases: 0 };
      bySign.set(
        sign,
        states.set(state, { seen: before.seen + seen, of: before.of + of, cases: before.cases + 1 }),
      );
    }
  const learned = <One extends Sign>(sign: One): One => {
    const states = bySign.get(sign.id);
    if (states === undefined) return sign;
    const shows = Object.entries(sign.shows).map(([state, figure]) => {
      const count = states.get(state);
      return [state, count === undefined ? figure : settledFigure(figure, count)] as const;
    });
    return { ...sign, shows: Object.fromEntries(shows) };
  };
  return ownNamesOnly({
    ...knowledge,
    version: versionWith(knowledge.version, taken),
    signs: Object.fromEntries(Object.entries(knowledge.signs).map(([id, sign]) => [id, learned(sign)])),
  });
}

function versionWith(version: string, taken: readonly CountedCase[]): string {
  const hash = contentHash(taken.map((each) => JSON.stringify(each))).slice(0, 8);
  return `${version}-settled-${taken.length}-${hash}`;
}

/** How many settled cases a version of the knowledge has taken in. */
export function settledIn(version: string): number {
  return Number(/-settled-(\d+)-[0-9a-f]{8}$/.exec(version)?.[1] ?? 0);
}

/** Said of whatever was weighed with such a version; undefined where no case was taken in. */
export function settledInWords(version: string): string | undefined {
  const cases = settledIn(version);
  return cases === 0
    ? undefined
    : `The figures of the signs were moved by ${counted(cases, 'settled case')} of the examiner’s own; each figure so moved says what it was before.`;
}
