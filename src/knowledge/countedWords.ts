import type { Figure } from './figureSchema.ts';

/** What was counted for a figure, as a person reads it, with the figure judged before; empty where nothing was. */
export function countedWords({ counts, judged }: Pick<Figure, 'counts' | 'judged'>): string {
  if (counts === undefined) return '';
  const before = judged === undefined ? '' : `; judged before counting: ${judged}`;
  return `counted: ${counts.seen} of ${counts.of} ${counts.where}${before}`;
}
