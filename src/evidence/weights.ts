import type { Shop } from '../knowledge/schema.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import { bareEvaluation, type Evaluation, wholeWith } from './evaluation.ts';
import type { Factor } from './factor.ts';
import { massesAfter, unitOfLook } from './massesAfter.ts';
import type { Look } from './prepareCase.ts';
import { type Masses, massesOf, shares } from './readingMasses.ts';
import { periodMass, shopMasses, shopProbabilities } from './shopMasses.ts';
import { decibans, weightWords } from './verbalScale.ts';

/** What one finding does: alone, and when taken out of the whole. Masses without it are kept for what follows. */
export type LookWeight = {
  look: Look;
  alone: number;
  withinWhole: number;
  /** For a habit that a shop file holds: the weight within the whole if no shop file were known. */
  withoutShopFiles?: number;
  forLeading: number;
  words: string;
  without: Masses;
  /** The masses with this finding and no other, and before any. */
  byItself: Masses;
  before: Masses;
  /** How probable the finding is under each reading, all other findings taken in. */
  shareUnder: Record<ReadingId, number>;
};

/** The readings in which the main body is of the period. */
export const periodReadings: readonly ReadingId[] = [
  'period-intact',
  'period-repaired',
  'period-altered',
  'made-up',
];

/**
 * The weight of every finding: decibans for a period piece against any later one, by itself and within the whole, and
 * for the leading reading against the rest.
 *
 * @source I. J. Good, Probability and the Weighing of Evidence (1950): ten times the base-ten logarithm of the ratio of
 *   the odds with and without
 */
export function weighLooks(evaluation: Evaluation, leading: ReadingId): LookWeight[] {
  const bare = bareEvaluation(evaluation);
  const oddsBare = periodOdds(bare.masses);
  const oddsWhole = periodOdds(evaluation.masses);
  const shops = likelyShops(evaluation);
  return evaluation.looks.map((look) => {
    const without = massesAfter(
      evaluation,
      look,
      evaluation.looks.filter((each) => each !== look),
    );
    const byItself = massesAfter(bare, look, [look]);
    const alone = decibans(periodOdds(byItself) / oddsBare);
    const withinWhole = decibans(oddsWhole / periodOdds(without));
    return {
      look,
      byItself,
      before: bare.masses,
      alone,
      withinWhole,
      ...withoutShops(evaluation, look, shops),
      forLeading: decibans(oddsOf(evaluation.masses, leading) / oddsOf(without, leading)),
      words: weightWords(withinWhole, 'a period piece', 'a later piece'),
      without,
      shareUnder: sharesUnder(evaluation.masses, without),
    };
  });
}

/** The shops that may well have made the piece: for the others it makes no odds what their files hold. */
function likelyShops({ model, whole, masses }: Evaluation): Shop[] {
  const probabilities = shopProbabilities(model, whole, masses.total);
  return model.layout.prepared.shops.filter((_, index) => (probabilities[index] ?? 0) > 0.1);
}

/** The weight of a habit with all period work counted as of no listed shop: what it would be without the files. */
function withoutShops(
  evaluation: Evaluation,
  look: Look,
  shops: readonly Shop[],
): { withoutShopFiles?: number } {
  const { layout } = evaluation.model;
  const held = shops.some((shop) => shop.habits.some((habit) => habit.sign === look.sign.id));
  if (look.sign.hangsOn !== 'making' || !held) return {};
  const without = wholeWith(
    evaluation,
    unitOfLook(layout, look),
    evaluation.looks.filter((each) => each !== look),
  );
  const unlistedOdds = (whole: Factor) => {
    const masses = massesOf(layout, whole);
    const later = readingIds.reduce(
      (sum, id) => (periodReadings.includes(id) ? sum : sum + masses.readings[id]),
      0,
    );
    return periodMass(shopMasses(layout, whole)[0]) / Math.max(later, 1e-300);
  };
  return { withoutShopFiles: decibans(unlistedOdds(evaluation.whole) / unlistedOdds(without)) };
}

/** How probable a finding is under each reading: what the reading weighs with it over what it weighs without. */
export function sharesUnder(withIt: Masses, without: Masses): Record<ReadingId, number> {
  const scale = Math.exp(withIt.log - without.log);
  return Object.fromEntries(
    Object.entries(withIt.readings).map(([id, mass]) => {
      const before = without.readings[id as ReadingId];
      return [id, before > 0 ? Math.min(1, (mass / before) * scale) : 0];
    }),
  ) as Record<ReadingId, number>;
}

function periodOdds(masses: Masses): number {
  const probability = shares(masses);
  return odds(
    periodReadings.reduce((sum, id) => sum + probability[id], 0),
    masses,
    periodReadings,
  );
}

function oddsOf(masses: Masses, reading: ReadingId): number {
  return odds(shares(masses)[reading], masses, [reading]);
}

/** Odds from a probability, the other side summed by itself so that nothing is lost near 1. */
function odds(probability: number, masses: Masses, readings: readonly ReadingId[]): number {
  const other = Object.entries(shares(masses)).reduce(
    (sum, [id, each]) => sum + (readings.includes(id as ReadingId) ? 0 : each),
    0,
  );
  return probability / Math.max(other, 1e-300);
}
