import type { Look } from '../evidence/preparedCase.ts';
import { listed } from '../ground/words.ts';
import { type ReadingId, readingIds, readingWords } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import { againstRest, massOf } from './logOdds.ts';
import { makingOf } from './startingOddsEffect.ts';

/** Where no weight can be told because a side has nothing left: which side, and what made it so. */
export type HardLimit = { leavesNothingOf: 'leading' | 'others' | 'either'; words: string };

/** A finding with the posterior it leaves by itself: what is asked for to find who makes a limit. */
export type LookByItself = { look: Look; byItself: Posterior };

/**
 * Why some findings have no weight for the leading reading: what has nothing left, and which finding or claim made it so.
 *
 * @param bare     the posterior before any finding
 * @param without  the posterior without the findings in question
 * @param own      the findings in question
 */
export function hardLimit(
  evaluation: Evaluation,
  leading: ReadingId,
  looks: readonly LookByItself[],
  bare: Posterior,
  without: Posterior,
  own: readonly Look[],
): HardLimit {
  const { one, other } = againstRest(leading);
  const ofLeading = massOf(evaluation.posterior, one);
  const ofOthers = massOf(evaluation.posterior, other);
  const none = ofLeading === 0 ? (ofOthers === 0 ? 'either' : 'leading') : 'others';
  const emptied = none === 'either' ? readingIds : none === 'others' ? other : one;
  const side =
    none === 'either'
      ? 'any reading'
      : none === 'others'
        ? `any reading but ${readingWords[leading].inSentence}`
        : readingWords[leading].inSentence;
  const leavesNothing = (posterior: Posterior) => massOf(posterior, emptied) === 0;
  const found = looks.filter((each) => leavesNothing(each.byItself)).map((each) => each.look);
  const told = (words: string): HardLimit => ({ leavesNothingOf: none, words });
  if (leavesNothing(bare))
    return told(`${beforehand(evaluation, leading, emptied)} nothing of ${side}, before anything was seen.`);
  const mine = found.filter((look) => own.includes(look));
  const theirs = found.filter((look) => !own.includes(look));
  if (mine.length > 0 && theirs.length === 0)
    return told(
      `${named(evaluation, mine)} leave${mine.length > 1 ? '' : 's'} nothing of ${side}: no number can be put on that.`,
    );
  if (found.length > 0)
    return told(
      `${named(evaluation, theirs)} leave${theirs.length > 1 ? '' : 's'} nothing of ${side}, with or without this: it can’t be weighed beside that.`,
    );
  return told(
    leavesNothing(without)
      ? `The other findings together leave nothing of ${side}, with or without this: it can’t be weighed beside that.`
      : `With the other findings this leaves nothing of ${side}: no number can be put on that.`,
  );
}

/** What, before any finding, leaves nothing of some readings. */
function beforehand({ model }: Evaluation, leading: ReadingId, emptied: readonly ReadingId[]): string {
  const { prepared } = model.layout;
  const odds = prepared.knowledge.making.startingOdds[prepared.odds];
  const ofOtherMakings = emptied.filter((id) => makingOf[id] !== makingOf[leading]);
  return odds !== undefined && ofOtherMakings.every((id) => odds[makingOf[id]] === 0)
    ? `The starting odds “${odds.name}” and the form leave`
    : 'The form, the starting odds and what is claimed leave';
}

function named({ model }: Evaluation, looks: readonly Look[]): string {
  const words = looks.map((look) => {
    const part = model.layout.prepared.parts.find((each) => each.id === look.part);
    const where = part === undefined || part.id === 'whole' ? 'the piece as a whole' : `the ${part.name}`;
    return `“${look.sign.name}” ${look.state === 'present' ? '' : 'not there '}on ${where}`;
  });
  return listed(words);
}
