import { scaleBand } from '../../evidence/verbalScale.ts';
import type { Weighing } from '../../evidence/weighing.ts';
import { type ReadingId, readingWords } from '../../piece/readings.ts';

type Weight = Weighing['weights'][number];

/** A finding named in a sentence: `“Pegged tenons” on the left side rail`, with what was found. */
export function findingWords(sign: string, part: string, state: Weight['state']): string {
  const seen = { present: '', absent: ', looked for and not there,', 'could-not-tell': ', could not tell,' }[
    state
  ];
  return `“${sign}” on ${part.startsWith('the ') ? part : `the ${part}`}${seen}`;
}

/** `speaks strongly for a later piece`: a weight in words, by the printed scale. */
export function speaksFor(decibans: number, side: string, otherSide: string): string {
  if (Math.abs(decibans) < 1) return 'says nothing either way';
  return `speaks ${scaleBand(decibans).adverb} for ${decibans > 0 ? side : otherSide}`;
}

/**
 * What a finding speaks for by itself; and where all else turns it to the other side, or first lets it speak, that as well:
 * `by itself speaks moderately for a later piece, but with all else it speaks weakly for a period piece`.
 */
export function speaksAltogether(
  weight: Pick<Weight, 'alone' | 'withinWhole' | 'limit'>,
  leading: ReadingId,
): string {
  const sides = sidesOf(leading);
  if (weight.alone === null || weight.withinWhole === null)
    return `has no weight in numbers (${weight.limit?.words ?? ''})`;
  const alone = speaksFor(weight.alone, ...sides);
  if (Math.abs(weight.withinWhole) < 1) return alone;
  const within = speaksFor(weight.withinWhole, ...sides);
  if (Math.abs(weight.alone) < 1) return `${within}, with all else taken in`;
  return weight.alone * weight.withinWhole > 0 ? alone : `by itself ${alone}, but with all else it ${within}`;
}

/** The two sides every weight is told for: the leading reading and all the others. */
export function sidesOf(leading: ReadingId): [string, string] {
  return [readingWords[leading].inSentence, 'another reading'];
}

/** The weights, heaviest first, whichever side they are on. */
export function heaviestFirst(weights: readonly Weight[], by: 'alone' | 'withinWhole'): Weight[] {
  return weights.toSorted((a, b) => Math.abs(b[by] ?? 0) - Math.abs(a[by] ?? 0));
}

/** A weight in whole decibans with its sign: a finer one cannot be felt (Good, from memory). */
export function sayDecibans(decibans: number | null): string {
  if (decibans === null) return 'no number';
  const whole = Math.round(decibans);
  return whole === 0 ? '0 db' : `${whole > 0 ? '+' : '−'}${Math.abs(whole)} db`;
}
