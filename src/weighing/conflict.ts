import { readingWords } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { leadingOf } from '../summation/readingPosterior.ts';
import { probableWords } from './probabilityWords.ts';
import type { Weighing } from './weighing.ts';
import type { LookWeight } from './weights.ts';

/** From this probability on, that nothing listed explains the findings is said and keeps every answer from being firm. */
const tooMuch = 0.1;

/**
 * How probable it is that none of the readings is what happened: a history outside the list, under which each finding would
 * come up as often as it does altogether, and none would bear on another. Findings that hang together under some reading
 * are far more probable under it; findings that clash are not.
 *
 * @returns the probability, 0–1, whether that is enough to be said, and why
 * @source ours; the ratio of the product of the single probabilities to the joint one is the conflict measure of F. V. Jensen,
 *   B. Chamberlain, T. Nordahl and F. Jensen (1990), from memory
 */
export function unexplained(evaluation: Evaluation, weights: readonly LookWeight[]): Weighing['unexplained'] {
  const { posterior, looks, model } = evaluation;
  if (!(posterior.total > 0))
    return {
      unexplained: true,
      probability: 1,
      reason: 'The findings cannot all be true of one piece under any reading.',
    };
  const before = model.draw(model.layout.prepared.knowledge.making.outsideTheList);
  if (looks.length < 2)
    return { unexplained: false, probability: before, reason: 'Too few findings to clash.' };
  const outside = before * Math.exp(conflict(evaluation, weights));
  const probability = outside / (outside + 1 - before);
  const leading = readingWords[leadingOf(posterior)].inSentence;
  return probability >= tooMuch
    ? {
        unexplained: true,
        probability,
        reason: `The findings clash: even for ${leading}, they are much less probable together than one by one. That something outside the list explains them is ${probableWords(probability)}. Look again at those that do not fit.`,
      }
    : {
        unexplained: false,
        probability,
        reason: `The findings hang together under at least one reading (${leading}).`,
      };
}

/** The logarithm of the product of the findings' single probabilities over that of all together. */
function conflict({ posterior }: Evaluation, weights: readonly LookWeight[]): number {
  const bare = weights[0]?.before ?? posterior;
  const log = (of: typeof posterior) => Math.log(of.total) + of.log - Math.log(bare.total) - bare.log;
  return weights.reduce((sum, { byItself }) => sum + log(byItself), 0) - log(posterior);
}
