import type { Figure } from './figureSchema.ts';
import { figureNumbers } from './figuresOf.ts';

/**
 * What lies beneath a figure, as a person reads it: what each of several judges said, what was counted, with the figure judged
 * before, and what others said that was not taken in; empty where one judged and nothing was counted.
 */
export function groundsInWords({
  counts,
  judged,
  apart,
  aside,
}: Pick<Figure, 'counts' | 'judged' | 'apart' | 'aside'>): string {
  const before = judged === undefined ? '' : `; judged before counting: ${judged}`;
  return [
    apart === undefined ? '' : `${apart.length} judged apart: ${bests(apart)}`,
    counts === undefined ? '' : `counted: ${counts.seen} of ${counts.of} ${counts.where}${before}`,
    aside === undefined ? '' : `asked for this alone, others said ${bests(aside)}: not taken in`,
  ]
    .filter((each) => each !== '')
    .join('; ');
}

function bests(figures: readonly string[]): string {
  return figures.map((in100) => figureNumbers({ in100 }).best).join(', ');
}
