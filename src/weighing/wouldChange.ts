import { withAlike } from '../evidence/alikeLooks.ts';
import type { Look } from '../evidence/preparedCase.ts';
import type { ReadingId } from '../piece/readings.ts';
import { posteriorFor } from '../summation/evaluate.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { fixModel } from '../summation/model.ts';
import { posteriorAfter } from '../summation/posteriorAfter.ts';
import { leadingOf, type Posterior } from '../summation/readingPosterior.ts';
import { againstRest, massOf } from './logOdds.ts';
import { type Turned, turnedLooks } from './turnedLooks.ts';

/** A smallest set of findings that, had they come out otherwise, would put another reading first. */
export type Reversal = { turned: Turned[]; to: ReadingId };

/** For sets of each size: of how many of the findings that would move the leading reading most all sets are tried. */
const pools = [
  { size: 2, of: 10, words: 'two of the ten' },
  { size: 3, of: 7, words: 'three of the seven' },
  { size: 4, of: 6, words: 'four of the six' },
  { size: 5, of: 5, words: 'all five of the five' },
] as const;

/**
 * The smallest sets of findings that, had they come out otherwise (see `turnedLooks`), would put another reading first:
 * every single finding is tried, then every set of two, three and more among those that would move the leading reading most.
 * Those that would move it most stand first.
 *
 * @param most  how many sets to report
 */
export function wouldChange(evaluation: Evaluation, leading: ReadingId, most = 5): Reversal[] {
  const singles = evaluation.looks
    .flatMap((look) => turnedMost(evaluation, look, leading))
    .sort((a, b) => a.odds - b.odds);
  const turning = singles
    .filter((each) => leadingOf(each.posterior) !== leading)
    .map(({ turned }) => ({ turned: [turned], to: leadingAfter(evaluation, [turned]) }))
    .filter(({ to }) => to !== leading);
  if (turning.length > 0) return turning.slice(0, most);
  const heavy = singles.map((each) => each.turned);
  for (const { size, of } of pools) {
    const found: Reversal[] = [];
    for (const set of subsets(heavy.slice(0, of), size)) {
      const to = leadingAfter(evaluation, set);
      if (to !== leading) found.push({ turned: set, to });
      if (found.length === most) break;
    }
    if (found.length > 0) return found;
  }
  return [];
}

/** What was tried, in words, for where nothing would change the reading: no more than that is known. */
export function triedWords(findings: number): string {
  const sets = pools.filter((each) => findings >= each.size).map((each) => each.words);
  if (findings === 0) return 'There is no finding that could have come out otherwise.';
  if (sets.length === 0) return 'Had the finding come out otherwise, the same reading would still lead.';
  return `No single finding, had it come out otherwise, would put another reading first; nor would ${sets.join(', ')} that would move it most.`;
}

type Single = { turned: Turned; posterior: Posterior; odds: number };

/** Of the ways a finding could have come out otherwise, the one that leaves the leading reading the least odds. */
function turnedMost(evaluation: Evaluation, look: Look, leading: ReadingId): Single[] {
  const { one, other } = againstRest(leading);
  const ways = turnedLooks(look).map((turned): Single => {
    const looks = evaluation.looks.map((each) => (each === look ? turned.otherwise : each));
    const posterior = posteriorAfter(evaluation, look, looks);
    return { turned, posterior, odds: massOf(posterior, one) / massOf(posterior, other) };
  });
  return ways.sort((a, b) => a.odds - b.odds).slice(0, 1);
}

function leadingAfter(evaluation: Evaluation, set: readonly Turned[]): ReadingId {
  const looks = withAlike(
    evaluation.looks.map((look) => set.find((each) => each.look === look)?.otherwise ?? look),
  );
  return leadingOf(posteriorFor(fixModel(evaluation.model.layout, evaluation.model.draw, looks), looks));
}

function* subsets<T>(pool: readonly T[], size: number, from = 0): Generator<T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= pool.length - size; i++) {
    for (const rest of subsets(pool, size - 1, i + 1)) yield [pool[i] as T, ...rest];
  }
}
