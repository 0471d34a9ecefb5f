import { inSentence } from '../knowledge/inSentence.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import type { Piece } from '../piece/piece.ts';

/**
 * The starting odds in the middle of a sentence, with who set them: `even starting odds, left as they are,` where the
 * examiner left them alone, `skeptical starting odds, chosen by the examiner,` where they did not.
 */
export function oddsInWords(
  piece: Pick<Piece, 'startingOdds'>,
  { making }: { making: Pick<Knowledge['making'], 'startingOdds' | 'defaultOdds'> },
): string {
  const name = making.startingOdds[piece.startingOdds ?? making.defaultOdds]?.name;
  const whose = piece.startingOdds === undefined ? 'left as they are' : 'chosen by the examiner';
  return `${name === undefined ? 'the' : inSentence(name)} starting odds, ${whose},`;
}
