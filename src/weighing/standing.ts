import { inSentence } from '../knowledge/inSentence.ts';
import { type Origin, origins, originWords } from './origins.ts';
import { probablyThat } from './probabilityWords.ts';
import type { Weighing } from './weighing.ts';

/** How probable each origin is. */
type Shares = Readonly<Record<string, number>>;
type Called = Pick<Weighing['parts'][number], 'standing' | 'words'>;

/** Above this share an origin is called; below it the part is unsure. */
const calledAt = 0.7;

/**
 * What a part is called, with a sentence: its origin, or `unsure`. A part on which no sign was answered is called nothing but
 * not looked at: what its usual renewal and the rest of the piece make of it says nothing of this part.
 *
 * @param answered  how many signs on it were answered, those that could not be told as well
 * @param weighed   how many of them carry weight
 */
export function standingOf(origin: Shares, answered: number, weighed: number): Called {
  if (answered === 0) return { standing: 'not-looked-at', words: 'Not looked at.' };
  const best = bestOf(origin);
  const words = originInWords(origin);
  if (weighed === 0) return { standing: 'unsure', words: `Looked at, but nothing could be told. ${words}` };
  return { standing: shareOf(origin, best) < calledAt ? 'unsure' : best, words };
}

/** `Very probably original (97 in 100).`: the most probable origin of a part in a sentence, by the one scale. */
export function originInWords(origin: Shares): string {
  const best = bestOf(origin);
  const share = shareOf(origin, best);
  const said = probablyThat(share, originWords[best]);
  return share < calledAt ? `Unsure; ${inSentence(said)}, anything else less so.` : `${said}.`;
}

function bestOf(origin: Shares): Origin {
  return origins.reduce((a, b) => (shareOf(origin, b) > shareOf(origin, a) ? b : a));
}

function shareOf(origin: Shares, of: Origin): number {
  return origin[of] ?? 0;
}
