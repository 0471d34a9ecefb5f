import { witnesses } from '../evidence/alikeLooks.ts';
import { bestDraw, type Draw } from '../evidence/figures.ts';
import type { Look } from '../evidence/preparedCase.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { preparedCaseOf, type SettledCase } from './settledCase.ts';
import { type Trial, trials } from './trials.ts';

/** What was counted for a figure: of how many parts that were in the state, and on how many of them the sign was there. */
export type FigureCount = { sign: string; state: string; seen: number; of: number };

/**
 * What one settled case counts for each figure of the signs that were looked for, by the knowledge as it stands without any of
 * the user's cases: so the counts of a case hang on no other case, and one that is taken out leaves nothing behind.
 *
 * Parts of one piece share one count: where a sign was looked for on n parts, each counts for 1 / (1 + (n − 1)ρ), ρ being how
 * much of what a part tells is told again by the next (`habitTogether` for the maker's ways, `alikeTogether` for all else).
 *
 * @returns counts of at least a thousandth; none where the form is not known or the findings leave the verdict nothing
 * @source effective size of a clustered sample: see `witnesses`
 */
export function expectedCounts(settled: SettledCase, knowledge: Knowledge, yearNow: number): FigureCount[] {
  const prepared = preparedCaseOf(settled, knowledge, yearNow);
  if (prepared === undefined) return [];
  const draw = bestDraw();
  const counts = new Map<string, FigureCount>();
  const all = trials(prepared, settled.verdict, draw);
  for (const { look, state, seen, of } of all) {
    const key = `${look.sign.id} ${state}`;
    const by = settled.weight * shareOfOne(look, all, knowledge, draw);
    const before = counts.get(key) ?? { sign: look.sign.id, state, seen: 0, of: 0 };
    counts.set(key, { ...before, seen: before.seen + by * seen, of: before.of + by * of });
  }
  return [...counts.values()].filter(({ of }) => of >= 0.001);
}

/** For how much one of the looks at a sign counts, all of them being of one piece. */
function shareOfOne({ sign }: Look, all: readonly Trial[], { making }: Knowledge, draw: Draw): number {
  const looks = new Set(all.flatMap(({ look }) => (look.sign.id === sign.id ? [look.key] : [])));
  const shared = draw(sign.hangsOn === 'making' ? making.habitTogether : making.alikeTogether);
  return witnesses(looks.size, shared) / looks.size;
}
