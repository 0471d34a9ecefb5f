import { bestDraw, drawWith, figureRange } from '../evidence/figures.ts';
import type { Figure } from '../knowledge/figureSchema.ts';
import type { ReadingId } from '../piece/readings.ts';
import { posteriorFor } from '../summation/evaluate.ts';
import type { Layout } from '../summation/layout.ts';
import { fixModel } from '../summation/model.ts';
import { shares } from '../summation/readingPosterior.ts';
import type { Weighing } from './weighing.ts';
import { forLeading, type LookWeight } from './weights.ts';

/** How many of the weightiest findings have their figures moved, and how many figures are told of. */
const findingsMoved = 10;
const figuresTold = 8;

/**
 * The figures that the leading reading hangs on most: each figure of the weightiest findings moved alone from its lowest
 * to its highest believable value, all others at their best.
 */
export function sensitivity(
  layout: Layout,
  weights: readonly LookWeight[],
  leading: ReadingId,
): Weighing['sensitivity'] {
  const heaviest = (weight: LookWeight) => Math.abs(forLeading(weight, leading));
  const heavy = weights.toSorted((a, b) => heaviest(b) - heaviest(a)).slice(0, findingsMoved);
  const figures = new Map<Figure, string>();
  for (const { look } of heavy) {
    // A measurement of the cause itself takes the place of the sign’s figures: none of them is asked for.
    if (look.byState !== undefined) continue;
    for (const [state, figure] of Object.entries(look.sign.shows))
      figures.set(figure, `${look.sign.name}: ${state}`);
    for (const shop of layout.prepared.shops) {
      const habit = shop.habits.find((each) => each.sign === look.sign.id);
      if (habit !== undefined) figures.set(habit.shows, `${look.sign.name}: habit of ${shop.name}`);
    }
  }
  const draw = bestDraw();
  const at = (figure: Figure, share: number) =>
    shares(posteriorFor(fixModel(layout, drawWith(draw, figure, share))))[leading];
  return [...figures]
    .map(([figure, name]) => {
      const { low, high } = figureRange(figure);
      const ends = [at(figure, low), at(figure, high)];
      return { figure: name, low: Math.min(...ends), high: Math.max(...ends) };
    })
    .sort((a, b) => b.high - b.low - (a.high - a.low))
    .slice(0, figuresTold);
}
