import type { OutputOf } from '../../../calculations/runCalculation.ts';
import type { setsSize } from '../../../calculations/sets.ts';
import { inSentence } from '../../../knowledge/inSentence.ts';
import { probablyThat, toldShares } from '../../../weighing/probabilityWords.ts';
import type { ReadNumber } from './readNumerals.ts';

/** What `sets.size` gives back. */
export type SetSize = OutputOf<typeof setsSize>;

/** What a set may have had, in a sentence. */
export function sizeWords(size: SetSize, numbers: readonly ReadNumber[]): string {
  const { median, p90 } = size;
  const seen = numbers.map(({ text }) => text).join(', ');
  const least = size.posterior[0]?.[0] ?? p90[0];
  const range = p90[0] === p90[1] ? `${p90[0]}` : `between ${p90[0]} and ${p90[1]}`;
  const upTo = probablyThat(shareWithin(size, [least, median], toldShares.half), `no more than ${median}`);
  const within = probablyThat(shareWithin(size, p90, toldShares.most), range);
  return `With ${seen} seen, the set had at least ${least} pieces: ${inSentence(upTo)}; ${inSentence(within)}.`;
}

/** What a stretch of sizes holds of the probability: at least what it was made to hold, where the list of sizes ends before it does. */
export function shareWithin(
  { posterior }: Pick<SetSize, 'posterior'>,
  [from, to]: readonly [number, number],
  madeFor: number,
): number {
  const held = posterior.filter(([n]) => n >= from && n <= to).reduce((sum, [, p]) => sum + p, 0);
  return Math.min(1, Math.max(madeFor, held));
}

/** Numerals that say another number from their other side, for a line of doubt; empty where there are none. */
export function turnedWords(numbers: readonly ReadNumber[]): string {
  const doubtful = numbers.filter(({ turned }) => turned !== undefined);
  if (doubtful.length === 0) return '';
  const each = doubtful.map(({ text, value, turned }) => `${text} (${value}) is ${turned}`).join('; ');
  return `Read from the other side, ${each}: make sure which way up it was cut.`;
}

/** The sizes worth drawing: up to nineteen twentieths and somewhat beyond, at most as many as there is room for. */
export function sizesDrawn(size: SetSize, most: number): [number, number][] {
  const span = size.p90[1] - (size.posterior[0]?.[0] ?? 0);
  const end = size.p90[1] + Math.max(2, Math.round(0.25 * span));
  return size.posterior.filter(([n]) => n <= end).slice(0, most);
}
