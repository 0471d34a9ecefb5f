import { capital } from '../ground/words.ts';
import { shortWords } from '../piece/observationWords.ts';
import type { Piece } from '../piece/piece.ts';
import { lookedOverId } from './weighObservations.ts';

/** Whose an observation is said to be: on the examiner’s own screen, or on paper that others read. */
export type Whose = 'your' | 'the examiner’s';

/** What speaks among the reasons and is no finding of a sign, named and marked as the examiner’s own. */
export function ownWords(id: string, { observations }: Pick<Piece, 'observations'>, whose: Whose): string {
  const start = capital(whose);
  if (id === lookedOverId) return `${start} own statement that nothing later was found in looking it over`;
  const words = observations[id]?.words;
  return words === undefined
    ? `${start} own observation, since withdrawn,`
    : `${start} own observation “${shortWords(words)}”`;
}
