import { outOf, probableWords } from './probabilityWords.ts';
import type { Weighing } from './weighing.ts';

/** What may be said of the claimed place, as sentences; none where no place was claimed. */
export function placeInWords({ place }: Pick<Weighing, 'place'>): string[] {
  if (place === undefined) return [];
  const { claimed, known, ifOfThePeriod, ofThePeriod } = place;
  const { there, elsewhere, unlisted } = ifOfThePeriod;
  return [
    `Whether it is from ${claimed} is a question of its own.`,
    known
      ? `If it is of the period, that its habits are those known of ${claimed} is ${probableWords(there)}; those of another place in the files, ${probableWords(elsewhere)}; of none in the files, ${probableWords(unlisted)}.`
      : `No file tells of work of this form and these years from there, so that nothing here speaks for or against it.`,
    outOf(ofThePeriod.asClaimed) === outOf(ofThePeriod.noneClaimed)
      ? 'The claim is no finding, and makes no odds to whether it is of the period.'
      : `The claim is no finding: with it, that the piece is of the period is ${probableWords(ofThePeriod.asClaimed)}; had no place been claimed, ${probableWords(ofThePeriod.noneClaimed)}.`,
  ];
}
