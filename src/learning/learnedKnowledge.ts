import { contentHash } from '../knowledge/contentHash.ts';
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
  const counted = cases.filter(({ counts }) => counts.length > 0);
  if (counted.length === 0) return knowledge;
  const bySign = new Map<string, Map<string, { seen: number; of: number; cases: number }>>();
  for (const { counts } of counted)
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
  return {
    ...knowledge,
    version: `${knowledge.version}-${settledMark}-${contentHash(counted.map((each) => JSON.stringify(each))).slice(0, 8)}`,
    signs: Object.fromEntries(Object.entries(knowledge.signs).map(([id, sign]) => [id, learned(sign)])),
  };
}

const settledMark = 'settled';

/** Whether a version of the knowledge is one with settled cases taken in. */
export function isLearned(version: string): boolean {
  return version.includes(`-${settledMark}-`);
}
