import type { Look } from '../evidence/preparedCase.ts';
import { type Steps, stepByStep } from '../ground/steps.ts';
import type { Shop } from '../knowledge/schema.ts';
import { periodReadings, type ReadingId, readingsOfMaking, readingWords } from '../piece/readings.ts';
import { bareEvaluation, wholeWith } from '../summation/evaluate.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import type { Factor } from '../summation/factor.ts';
import { cliqueOfLook, posteriorAfter, posteriorWithout } from '../summation/posteriorAfter.ts';
import { type Posterior, posteriorOf } from '../summation/readingPosterior.ts';
import { shopPosterior, shopProbabilities } from '../summation/shopPosterior.ts';
import { type HardLimit, hardLimit } from './hardLimit.ts';
import { againstRest, type Sides, strongestRival, weightBetween } from './logOdds.ts';
import { weightWords } from './verbalScale.ts';

/**
 * What one finding, or several together, do for the leading reading, in decibans: within the whole against all the others,
 * and against the strongest of them. `null` where a side has nothing left; then `limit` says why.
 */
export type WeightInWhole = {
  withinWhole: number | null;
  againstRival: number | null;
  limit?: HardLimit;
  words: string;
};

/** What one finding does: alone, and when taken out of the whole. Posterior without it are kept for what follows. */
export type LookWeight = WeightInWhole & {
  look: Look;
  alone: number | null;
  /** The same for a period piece (altered or not) against any later one. */
  periodAgainstLater: { alone: number | null; withinWhole: number | null };
  /** For a habit that a shop file holds: period against later within the whole if no shop file were known. A habit speaks of the making. */
  withoutShopFiles?: number;
  without: Posterior;
  /** The posterior with this finding and no other, and before any. */
  byItself: Posterior;
  before: Posterior;
  /** How probable the finding is under each reading, all other findings taken in. */
  shareUnder: Record<ReadingId, number>;
};

/** A piece put together from old ones is neither of the period as it stands nor a later copy: it stands on no side. */
export const periodAndLater: Sides = {
  one: readingsOfMaking['of-the-period'],
  other: [...readingsOfMaking['later-copy'], ...readingsOfMaking['to-deceive']],
};

/** The weight of every finding for the leading reading against the rest, by itself and within the whole. */
export function* weighLooks(evaluation: Evaluation, leading: ReadingId): Steps<LookWeight[]> {
  const bare = bareEvaluation(evaluation);
  const before = bare.posterior;
  const shops = likelyShops(evaluation);
  const posterior = yield* stepByStep(evaluation.looks, (look) => ({
    look,
    byItself: posteriorAfter(bare, look, [look]),
    without: posteriorWithout(evaluation, [look]),
  }));
  return yield* stepByStep(posterior, ({ look, byItself, without }) => ({
    look,
    byItself,
    before,
    without,
    alone: weightBetween(byItself, before, againstRest(leading)),
    ...weightInWhole(evaluation, leading, posterior, before, without, [look]),
    periodAgainstLater: {
      alone: weightBetween(byItself, before, periodAndLater),
      withinWhole: weightBetween(evaluation.posterior, without, periodAndLater),
    },
    ...withoutShops(evaluation, look, shops),
    shareUnder: sharesUnder(evaluation.posterior, without),
  }));
}

/**
 * What some findings do together within the whole, from the posterior without them.
 *
 * @param looks   every finding with the posterior it leaves by itself
 * @param before  the posterior before any finding
 */
export function weightInWhole(
  evaluation: Evaluation,
  leading: ReadingId,
  looks: readonly { look: Look; byItself: Posterior }[],
  before: Posterior,
  without: Posterior,
  own: readonly Look[],
): WeightInWhole {
  const { posterior } = evaluation;
  const rival = strongestRival(posterior, leading);
  const withinWhole = weightBetween(posterior, without, againstRest(leading));
  const againstRival = weightBetween(posterior, without, { one: [leading], other: [rival] });
  if (withinWhole !== null)
    return {
      withinWhole,
      againstRival,
      words: weightWords(withinWhole, readingWords[leading].inSentence, 'another reading'),
    };
  const limit = hardLimit(evaluation, leading, looks, before, without, own);
  return { withinWhole, againstRival, limit, words: limit.words };
}

/** The shops that may well have made the piece: for the others it makes no odds what their files hold. */
function likelyShops({ model, whole, posterior }: Evaluation): Shop[] {
  const probabilities = shopProbabilities(model, whole, posterior.total);
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
    cliqueOfLook(layout, look),
    evaluation.looks.filter((each) => each !== look),
  );
  const unlisted = (whole: Factor): Posterior => {
    const posterior = posteriorOf(layout, whole);
    const [row] = shopPosterior(layout, whole);
    const readings = { ...posterior.readings };
    for (const id of periodReadings) readings[id] = row?.[id] ?? 0;
    return { ...posterior, readings };
  };
  const weight = weightBetween(unlisted(evaluation.whole), unlisted(without), periodAndLater);
  return weight === null ? {} : { withoutShopFiles: weight };
}

/** How probable a finding is under each reading: what the reading weighs with it over what it weighs without. */
export function sharesUnder(withIt: Posterior, without: Posterior): Record<ReadingId, number> {
  const scale = Math.exp(withIt.log - without.log);
  return Object.fromEntries(
    Object.entries(withIt.readings).map(([id, mass]) => {
      const before = without.readings[id as ReadingId];
      return [id, before > 0 ? Math.min(1, (mass / before) * scale) : 0];
    }),
  ) as Record<ReadingId, number>;
}

/**
 * How much a finding, or several together, count for the leading reading when the weightiest are looked for: what makes a limit
 * counts most, and what stands beside a limit that others make counts nothing.
 */
export function forLeading(
  { withinWhole, without }: Pick<LookWeight, 'withinWhole' | 'without'>,
  leading: ReadingId,
): number {
  if (withinWhole !== null) return withinWhole;
  const hadNothing = weightBetween(without, without, againstRest(leading)) === null;
  return hadNothing ? 0 : Number.POSITIVE_INFINITY;
}
