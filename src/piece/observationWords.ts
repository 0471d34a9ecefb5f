import { listed } from '../ground/words.ts';
import {
  type ExpectedWord,
  expectedWords,
  type Observation,
  type PieceHistory,
  pieceHistories,
} from './observation.ts';

type Expected = Observation['expected'];

/** How a kind of piece is called on a line of its own, and behind “if it is”. */
export const historyWords: Record<PieceHistory, { title: string; inSentence: string }> = {
  original: { title: 'Original, little changed', inSentence: 'original' },
  repaired: { title: 'Repaired, or with renewed parts', inSentence: 'repaired' },
  altered: { title: 'Altered or improved', inSentence: 'altered' },
  married: { title: 'Married, or assembled from old parts', inSentence: 'married' },
  copied: { title: 'A later copy', inSentence: 'a later copy' },
  faked: { title: 'Made or altered to pass as older', inSentence: 'made to pass as older' },
};

/** What the examiner states who looked a piece over and found nothing later. */
export const lookedOverWords = 'I looked the whole over for mends, later parts and changes, and found none.';

/** What the examiner is taken to say of every kind of piece until they say otherwise. */
export const expectedAtFirst: Expected = {
  original: 'sometimes',
  repaired: 'sometimes',
  altered: 'sometimes',
  married: 'sometimes',
  copied: 'sometimes',
  faked: 'sometimes',
};

/** Whether an observation is as much to be expected of every kind of piece, so that it says nothing for any. */
export function saysNothing(expected: Expected): boolean {
  return pieceHistories.every((each) => expected[each] === expected.original);
}

/** How far it would be expected, the most first: `often if repaired or altered; seldom if original, married or a later copy`. */
export function expectedInWords(expected: Expected): string {
  if (saysNothing(expected)) return `${expected.original}, whatever the piece is`;
  const kinds = (word: ExpectedWord) =>
    pieceHistories.filter((each) => expected[each] === word).map((each) => historyWords[each].inSentence);
  return expectedWords
    .toReversed()
    .map((word) => ({ word, of: kinds(word) }))
    .filter(({ of }) => of.length > 0)
    .map(({ word, of }) => `${word} if ${listed(of, 'or')}`)
    .join('; ');
}

/** The words of an observation at the head of a line, cut at a word's end where they are long. */
export function shortWords(words: string, most = 80): string {
  const line = words.trim().replaceAll(/\s+/g, ' ');
  if (line.length <= most) return line.replace(/[.]$/, '');
  const cut = line.slice(0, most);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), most / 2)).replace(/[\s,;:.]+$/, '')} …`;
}
