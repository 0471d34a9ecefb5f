import { mean } from '../ground/statistics.ts';
import type { Figure } from '../knowledge/figureSchema.ts';
import type { Sign } from '../knowledge/schema.ts';
import { type Draw, figureRange } from './figures.ts';

/** Gives a draw in which every sign speaks less sharply. */
export type Blunting = (draw: Draw, widths: number) => Draw;

/**
 * Signs that all speak less sharply than whoever set their figures thought: each figure is moved toward the mean of its sign's by
 * so many widths (half its range), never beyond. Figures drawn one by one average out; a judge who is too sure is so throughout.
 *
 * @param signs  those whose figures are moved
 */
export function blunting(signs: Iterable<Sign>): Blunting {
  const rows = [...new Set(signs)].map((sign) =>
    Object.values(sign.shows).map((figure) => {
      const { low, high } = figureRange(figure);
      return { figure, width: (high - low) / 2 };
    }),
  );
  return (draw, widths) => {
    if (widths <= 0) return draw;
    const moved = new Map<Figure, number>();
    for (const row of rows) {
      const drawn = row.map(({ figure }) => draw(figure));
      const middle = mean(drawn);
      row.forEach(({ figure, width }, i) => {
        const value = drawn[i] as number;
        moved.set(
          figure,
          value + Math.sign(middle - value) * Math.min(Math.abs(middle - value), widths * width),
        );
      });
    }
    return (figure) => moved.get(figure) ?? draw(figure);
  };
}
