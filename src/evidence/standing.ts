import { originWords } from './explanations.ts';
import { type Origin, origins } from './partPosterior.ts';

/** Above this share an origin is called; below it the part is unsure. */
const calledAt = 0.7;

/** What a part is called from its origin's shares: the origin itself, or `unsure`, with a sentence. */
export function standingOf(origin: Record<Origin, number>): { standing: Origin | 'unsure'; words: string } {
  const best = origins.reduce((a, b) => (origin[b] > origin[a] ? b : a));
  const share = origin[best];
  const outOf = share > 0.99 ? 'more than 99' : `${Math.round(share * 100)}`;
  if (share < calledAt)
    return { standing: 'unsure', words: `Unsure; most probably ${originWords[best]} (${outOf} in 100).` };
  const how = share >= 0.95 ? 'Very probably' : 'Probably';
  return { standing: best, words: `${how} ${originWords[best]} (${outOf} in 100).` };
}
