import { isClaimed } from '../evidence/claimedShop.ts';
import { periodReadings } from '../piece/readings.ts';
import { posteriorFor } from '../summation/evaluate.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { shares } from '../summation/readingPosterior.ts';
import { shopProbabilities } from '../summation/shopPosterior.ts';
import { makingShares } from './makingFirst.ts';
import { shown } from './shown.ts';
import type { Weighing } from './weighing.ts';

/**
 * Whether the claimed place is right, as a question of its own: a piece from elsewhere may be as old as any. And how probable it is
 * that the piece is of the period with the claim and without one, since a claim is no finding.
 *
 * @returns undefined where no place is claimed
 */
export function claimedPlace({ model, whole, posterior }: Evaluation): Weighing['place'] {
  const { prepared } = model.layout;
  if (prepared.place.trim() === '') return undefined;
  const ofPeriod = periodReadings.reduce((sum, id) => sum + posterior.readings[id], 0);
  // Shares of the period work: what is made after a shop is not of it.
  const listed = shopProbabilities(model, whole, ofPeriod);
  const sum = (claimed: boolean) =>
    prepared.shops.reduce(
      (total, shop, s) => (isClaimed(shop, prepared.place) === claimed ? total + (listed[s] ?? 0) : total),
      0,
    );
  const [there, elsewhere] = [sum(true), sum(false)];
  // A claim only bears on shops, and on whose work is copied: where no habit of a shop was looked for it changes nothing.
  const open = model.layout.scenarios.every(({ shop }) => shop === 0)
    ? posterior
    : posteriorFor(fixModel(layOut({ ...prepared, place: '' }), model.draw));
  return {
    claimed: prepared.place,
    known: prepared.shops.some((shop) => isClaimed(shop, prepared.place)),
    ifOfThePeriod: { there, elsewhere, unlisted: Math.max(0, 1 - there - elsewhere) },
    ofThePeriod: {
      asClaimed: shown(makingShares(shares(posterior))['of-the-period']),
      noneClaimed: shown(makingShares(shares(open))['of-the-period']),
    },
  };
}
