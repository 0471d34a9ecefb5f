import { type ReadingId, readingIds } from '../piece/readings.ts';
import { betaDraw, betaFigure, seededRandom } from './betaDraws.ts';
import { caseFigures } from './caseFigures.ts';
import { massesFor } from './evaluation.ts';
import type { Layout } from './layout.ts';
import { fixModel } from './model.ts';
import { leadingOf, shares } from './readingMasses.ts';

/** How the readings move when every figure is drawn anew from its range. */
export type Redraws = {
  intervals: Record<ReadingId, [number, number]>;
  shareLeading: number;
  draws: number;
  stopped: boolean;
};

/**
 * Redraws all figures and weighs again, many times: the middle 90 % of every reading's probability, and in what share of
 * the draws the leading reading leads.
 *
 * @param seed        fixes the draws
 * @param onProgress  told the share done; returning false stops, and what was drawn so far is given
 */
export function redraws(
  layout: Layout,
  leading: ReadingId,
  draws: number,
  seed: number,
  onProgress?: (share: number) => boolean,
): Redraws {
  const random = seededRandom(seed);
  const figures = caseFigures(layout.prepared).map(betaFigure);
  const values = readingIds.map(() => new Float64Array(draws));
  let led = 0;
  let done = 0;
  for (; done < draws; done++) {
    if (done % 10 === 0 && onProgress?.(done / draws) === false) break;
    const masses = massesFor(fixModel(layout, betaDraw(random, figures)));
    const probability = shares(masses);
    readingIds.forEach((id, i) => {
      (values[i] as Float64Array)[done] = probability[id];
    });
    if (leadingOf(masses) === leading) led++;
  }
  const intervals = Object.fromEntries(
    readingIds.map((id, i) => {
      const sorted = (values[i] as Float64Array).slice(0, done).sort();
      return [id, [quantile(sorted, 0.05), quantile(sorted, 0.95)]];
    }),
  ) as Record<ReadingId, [number, number]>;
  return { intervals, shareLeading: done === 0 ? 0 : led / done, draws: done, stopped: done < draws };
}

/** Quantile by straight line between order statistics (Hyndman and Fan's type 7). */
function quantile(sorted: Float64Array, share: number): number {
  if (sorted.length === 0) return 0;
  const at = (sorted.length - 1) * share;
  const low = Math.floor(at);
  const a = sorted[low] ?? 0;
  return a + ((sorted[Math.min(sorted.length - 1, low + 1)] ?? a) - a) * (at - low);
}
