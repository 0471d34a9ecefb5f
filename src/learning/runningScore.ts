import { bestDraw } from '../evidence/figures.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { posteriorFor } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { shares } from '../summation/readingPosterior.ts';
import { expectedCounts, type FigureCount } from './expectedCounts.ts';
import { learnedKnowledge } from './learnedKnowledge.ts';
import { inOrder, preparedCaseOf, type SettledCase } from './settledCase.ts';

/**
 * A settled case as it was reckoned: what it counts, and how probable its verdict was from its findings, by the figures as they
 * are and by those learned from the cases settled before it. `fixed` and `learned` are undefined where it could not be weighed.
 */
export type ReckonedCase = {
  piece: string;
  on: string;
  weight: number;
  counts: FigureCount[];
  fixed?: number;
  learned?: number;
};

/**
 * Reckons all settled cases in the order they were settled. Each is foretold before it is learned from.
 *
 * @param knowledge  without any settled case taken in
 * @param onProgress  told the share done; returning false stops it
 * @source prequential scoring: A. P. Dawid, JRSS A 147 (1984), from memory
 */
export function reckonSettled(
  cases: readonly SettledCase[],
  knowledge: Knowledge,
  yearNow: number,
  onProgress: (share: number) => boolean = () => true,
): ReckonedCase[] {
  const reckoned: ReckonedCase[] = [];
  for (const each of inOrder(cases)) {
    if (!onProgress(reckoned.length / cases.length)) break;
    const fixed = probabilityOfVerdict(each, knowledge, yearNow);
    const learned = probabilityOfVerdict(each, learnedKnowledge(knowledge, reckoned), yearNow);
    const { piece, on, weight } = each;
    reckoned.push({
      piece,
      on,
      weight,
      counts: expectedCounts(each, knowledge, yearNow),
      ...(fixed === undefined || learned === undefined ? {} : { fixed, learned }),
    });
  }
  return reckoned;
}

/** How probable the verdict of a settled case is by its findings; undefined where they can't be weighed. */
export function probabilityOfVerdict(
  settled: SettledCase,
  knowledge: Knowledge,
  yearNow: number,
): number | undefined {
  const prepared = preparedCaseOf(settled, knowledge, yearNow);
  if (prepared === undefined) return undefined;
  const probability = shares(posteriorFor(fixModel(layOut(prepared), bestDraw())));
  return settled.verdict.reduce((sum, id) => sum + probability[id], 0);
}
