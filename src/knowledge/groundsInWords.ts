import { counted } from '../ground/words.ts';
import type { Figure } from './figureSchema.ts';
import { figureNumbers } from './figuresOf.ts';

/**
 * What lies beneath a figure, as a person reads it: what each of several judges said, what was counted, with the figure judged
 * before, what settled cases of the user's own counted, and what others said that was not taken in; empty where one judged and nothing was counted.
 */
export function groundsInWords({
  counts,
  judged,
  apart,
  aside,
  settled,
}: Pick<Figure, 'counts' | 'judged' | 'apart' | 'aside' | 'settled'>): string {
  const before = judged === undefined ? '' : `; judged before counting: ${judged}`;
  return [
    apart === undefined ? '' : `${apart.length} judged apart: ${bests(apart)}`,
    counts === undefined ? '' : `counted: ${counts.seen} of ${counts.of} ${counts.where}${before}`,
    settled === undefined ? '' : settledInWords(settled),
    aside === undefined ? '' : `asked for this alone, others said ${bests(aside)}: not taken in`,
  ]
    .filter((each) => each !== '')
    .join('; ');
}

function settledInWords({ seen, of, cases, before }: NonNullable<Figure['settled']>): string {
  const few = (count: number) => count.toFixed(1).replace(/\.0$/, '');
  return `from ${counted(cases, 'settled case')} of your own: ${few(seen)} of ${few(of)}; before: ${before}`;
}

function bests(figures: readonly string[]): string {
  return figures.map((in100) => figureNumbers({ in100 }).best).join(', ');
}
