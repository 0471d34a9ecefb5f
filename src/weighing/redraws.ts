import { betaDraw, betaFigure } from '../evidence/betaDraws.ts';
import { blunting } from '../evidence/bluntedDraw.ts';
import { caseFigures } from '../evidence/caseFigures.ts';
import { normalDraw, seededRandom } from '../ground/seededRandom.ts';
import { quantile } from '../ground/statistics.ts';
import { type MakingKind, makingKinds, type ReadingId, readingIds } from '../piece/readings.ts';
import { posteriorFor } from '../summation/evaluate.ts';
import type { Layout } from '../summation/layout.ts';
import { fixModel } from '../summation/model.ts';
import { leadingOf, shares } from '../summation/readingPosterior.ts';
import { leadingMaking, type MakingRedraws, makingShares } from './makingFirst.ts';

/** How the readings move when every figure is drawn anew from its range. */
export type Redraws = {
  intervals: Record<ReadingId, [number, number]>;
  shareLeading: number;
  /** The same of how the piece came to be. */
  making: MakingRedraws;
  draws: number;
  stopped: boolean;
};

/**
 * By how many widths (half a figure's range) all signs together speak less sharply than they were judged to, in one redraw: the
 * positive part of a normal deviation with this standard deviation, common judgement.
 */
const sharedBluntness = 0.5;

/**
 * Redraws all figures and weighs again, many times: the middle 90 % of every reading's probability, and in what share of
 * the draws the leading reading leads. In each, all signs are blunter by one amount: who judged them may be too sure throughout.
 *
 * @param seed        fixes the draws
 * @param onProgress  told the share done; returning false stops, and what was drawn so far is given
 */
export function redraws(
  layout: Layout,
  leading: ReadingId,
  leadingKind: MakingKind,
  draws: number,
  seed: number,
  onProgress?: (share: number) => boolean,
): Redraws {
  const random = seededRandom(seed);
  const figures = caseFigures(layout.prepared).map(betaFigure);
  const blunt = blunting(layout.prepared.looks.map((look) => look.sign));
  const values = readingIds.map(() => new Float64Array(draws));
  const kinds = makingKinds.map(() => new Float64Array(draws));
  let led = 0;
  let kindLed = 0;
  let done = 0;
  for (; done < draws; done++) {
    if (done % 10 === 0 && onProgress?.(done / draws) === false) break;
    const bluntness = sharedBluntness * normalDraw(random);
    const draw = blunt(betaDraw(random, figures), bluntness);
    const posterior = posteriorFor(fixModel(layout, draw));
    const probability = shares(posterior);
    readingIds.forEach((id, i) => {
      (values[i] as Float64Array)[done] = probability[id];
    });
    const making = makingShares(probability);
    makingKinds.forEach((kind, i) => {
      (kinds[i] as Float64Array)[done] = making[kind];
    });
    if (leadingOf(posterior) === leading) led++;
    if (leadingMaking(making) === leadingKind) kindLed++;
  }
  const middle = (drawn: Float64Array): [number, number] => {
    if (done === 0) return [0, 0];
    const sorted = drawn.slice(0, done).sort();
    return [quantile(sorted, 0.05), quantile(sorted, 0.95)];
  };
  const share = (count: number) => (done === 0 ? 0 : count / done);
  return {
    intervals: byId(readingIds, values.map(middle)),
    shareLeading: share(led),
    making: { intervals: byId(makingKinds, kinds.map(middle)), shareLeading: share(kindLed) },
    draws: done,
    stopped: done < draws,
  };
}

function byId<Id extends string, Value>(ids: readonly Id[], values: readonly Value[]): Record<Id, Value> {
  return Object.fromEntries(ids.map((id, i) => [id, values[i]])) as Record<Id, Value>;
}
