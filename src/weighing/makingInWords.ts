import { capital } from '../ground/words.ts';
import { inSentence } from '../knowledge/inSentence.ts';
import { makingWords, type ReadingId, readingWords } from '../piece/readings.ts';
import { outOf, probabilityBand } from './probabilityWords.ts';
import type { Weighing } from './weighing.ts';

/** What is printed in the place of a probability where the knowledge of the form leaves no way to an answer. */
export const notConsideredWords = 'not considered';

/** Why an answer was not considered. */
export const whyNotConsidered =
  'Not considered: the knowledge files have nothing by which a piece of this form is put together from old ones, so nothing was weighed for or against it.';

/** How the piece came to be, to go on behind the odds: `very probably of the period`. */
export function makingInWords({ making }: Pick<Weighing, 'making'>): string {
  const probability = making.answers.find(({ id }) => id === making.leading)?.probability ?? 0;
  return `${inSentence(probabilityBand(probability).adverb)} ${makingWords[making.leading].inSentence}`;
}

/** The conditions of a piece of the period, each with how probable it is if it is one; the most probable first. */
export function conditionsInWords({ condition }: Pick<Weighing, 'condition'>): string {
  return condition.ifOfThePeriod
    .toSorted((a, b) => b.share - a.share)
    .map(({ id, share }) => `${conditionWords[id]}, ${outOf(share)}`)
    .join('; ');
}

/** The conditions as they stand behind “if it is of the period”. */
export const conditionWords: Partial<Record<ReadingId, string>> = {
  'period-intact': 'substantially intact',
  'period-repaired': 'with later repairs',
  'period-altered': 'altered or improved',
};

/** How a condition is called on a line of its own. */
export function conditionTitle(id: ReadingId): string {
  const words = conditionWords[id] ?? readingWords[id].title;
  return capital(words);
}

/** `5 of the 7 parts that were looked at are original; of the 12 not looked at, about 1 is to be expected later.` */
export function partsInWords({ condition: { seen, unseen } }: Pick<Weighing, 'condition'>): string {
  const later = Math.round(unseen.laterExpected);
  const expected = later === 0 ? 'hardly any is' : `about ${later} ${later === 1 ? 'is' : 'are'}`;
  const rest = `of the ${unseen.parts} not looked at, ${expected} to be expected later`;
  if (seen.parts === 0)
    return `No part was looked at; of the ${unseen.parts}, ${expected} to be expected later.`;
  const those = `${seen.original} of the ${seen.parts} parts that were looked at ${seen.original === 1 ? 'is' : 'are'} original`;
  return unseen.parts === 0 ? `${those}; no part was left out.` : `${those}; ${rest}.`;
}
