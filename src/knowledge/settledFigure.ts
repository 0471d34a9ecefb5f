import { betaOfRange, rangeOfBeta } from '../ground/betaDistribution.ts';
import type { Figure } from './figureSchema.ts';
import { figureNumbers } from './figuresOf.ts';

/** What settled cases of the user's own count for a figure, and how many cases they are. */
export type SettledCount = { seen: number; of: number; cases: number };

/**
 * A figure moved by settled cases: its text becomes the mean and the 5th and 95th percentile of Beta(a + seen, b + of − seen),
 * Beta(a, b) being the figure as it was; `settled` keeps what was counted and the text it had. However many cases there are, they
 * count for no more than the figure itself did: their sum is held at a + b.
 *
 * @returns the figure as it is where nothing was counted or its range gives no distribution
 */
export function settledFigure(figure: Figure, { seen, of, cases }: SettledCount): Figure {
  const { best, low, high } = figureNumbers(figure);
  const before = betaOfRange({ best: best / 100, low: low / 100, high: high / 100 });
  if (before === undefined || !(of > 0)) return figure;
  const held = Math.min(1, (before[0] + before[1]) / of);
  const a = before[0] + held * seen;
  const b = before[1] + held * (of - seen);
  const learned = rangeOfBeta([a, b]);
  return {
    ...figure,
    in100: `${fine(learned.best)}, ${fine(learned.low)}–${fine(learned.high)}`,
    settled: { seen, of, cases, before: figure.in100 },
  };
}

/** A share as one of 100, fine enough that a single case still shows. */
function fine(share: number): string {
  const of100 = Math.min(Math.max(100 * share, 0.01), 99.99);
  return String(Number(of100.toFixed(Math.min(of100, 100 - of100) < 10 ? 2 : 1)));
}
