import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import type { Look, PreparedCase } from '../evidence/preparedCase.ts';
import type { Fault } from '../ground/fault.ts';
import { sum } from '../ground/statistics.ts';
import { finished, type Steps } from '../ground/steps.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { findingKey } from '../piece/finding.ts';
import type { ReadingId } from '../piece/readings.ts';
import { alterationShare } from '../summation/alterationShare.ts';
import { evaluate } from '../summation/evaluate.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import { Kept } from '../summation/kept.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { leadingOf, shares } from '../summation/readingPosterior.ts';
import { shopProbabilities } from '../summation/shopPosterior.ts';
import { bindingLooks } from './bindingLooks.ts';
import { claimedPlace } from './claimedPlace.ts';
import { unexplained } from './conflict.ts';
import { isConsidered } from './considered.ts';
import { contradictions } from './contradictions.ts';
import { firmness } from './firmness.ts';
import { type FirstAnswer, firstAnswer, readingsTold, weighParts } from './firstAnswer.ts';
import { yearSummary } from './highestDensity.ts';
import { strongestRival, weightBetween } from './logOdds.ts';
import { lookPlan, withinLimits } from './lookPlan.ts';
import { conditionOf, leadingMaking, makingFirst, makingShares } from './makingFirst.ts';
import { nextLooks } from './nextLooks.ts';
import { massByBin } from './partPosterior.ts';
import { reasonGroups } from './reasonGroups.ts';
import { redraws } from './redraws.ts';
import { sensitivity } from './sensitivity.ts';
import { shown } from './shown.ts';
import { startingOddsEffect } from './startingOddsEffect.ts';
import type { Weighing } from './weighing.ts';
import { weighObservations } from './weighObservations.ts';
import { periodAndLater, type WeightInWhole, weighLooks, weightInWhole } from './weights.ts';
import { triedWords, wouldChange } from './wouldChange.ts';

/** What weighing leans on besides the case and the knowledge. */
export type WeighingContext = {
  /** The current year: nothing can have been made later. */
  yearNow: number;
  /** Told the share done of the redraws; returning false stops them. */
  onProgress?: ((share: number) => boolean) | undefined;
  /** Told what to look at next before the redraws begin. */
  onEarly?: ((looks: EarlyLooks) => void) | undefined;
  /** Told the first answer of a quick weighing, before its weights are worked out. */
  onFirst?: ((answer: FirstAnswer) => void) | undefined;
  /** What the weighing of the case before left: of a case with one finding more only what that bears on is summed anew. */
  kept?: Kept | undefined;
};

/** What is known before the redraws and asked for soonest. */
export type EarlyLooks = Pick<Weighing, 'nextLooks' | 'plan'>;

type Weighed = { ok: true; output: Weighing } | { ok: false; faults: Fault[] };

/** How many redraws are made when the case does not say. */
const usualDraws = 500;

/**
 * Weighs the findings of a case: the readings of its history with their years, parts, alterations and shops, what each
 * finding does, what doesn’t fit, what to look at next and how firm it all is.
 *
 * Method: exact summation over a causal model of the piece's history (docs/model.md); nothing is sampled but the
 * figures of the knowledge, redrawn from their ranges to show how firm the answer is.
 *
 * @returns the weighing, or the faults that leave nothing to weigh
 * @source ours, after I. J. Good (weights), S. Lauritzen and D. Spiegelhalter (exact inference in causal networks)
 */
export function weighCase(input: CaseToWeigh, knowledge: Knowledge, context: WeighingContext): Weighed {
  return finished(weighInSteps(input, knowledge, context));
}

/** The same step by step, so that it can be dropped when the case has changed: the first step ends with the first answer. */
export function* weighInSteps(
  input: CaseToWeigh,
  knowledge: Knowledge,
  context: WeighingContext,
): Steps<Weighed> {
  const ready = prepareCase(input, knowledge, context.yearNow);
  if (!ready.ok) return ready;
  const { prepared } = ready;
  const { kept = new Kept() } = context;
  const layout = layOut(prepared, false, kept);
  const evaluation = evaluate(fixModel(layout, kept.draw, undefined, undefined, kept.sums));
  const leading = leadingOf(evaluation.posterior);
  const quick = input.quick === true;
  const draws = quick ? 0 : (input.draws ?? usualDraws);
  const seed = input.seed ?? 1;
  const early = quick ? { nextLooks: [] } : looksFor(input, prepared);
  if (!quick) context.onEarly?.(early);
  else if (context.onFirst !== undefined) context.onFirst(firstAnswer(evaluation, input));
  yield;
  const probability = shares(evaluation.posterior);
  const making = makingShares(probability);
  const drawn = redraws(layout, leading, leadingMaking(making), draws, seed, context.onProgress);
  const weights = yield* weighLooks(evaluation, leading);
  const parts = weighParts(evaluation, input);
  const clash = unexplained(evaluation, weights);
  const before = weights[0]?.before ?? evaluation.posterior;
  const grounds = {
    looks: prepared.looks.length + prepared.observations.length + Number(prepared.lookedOver),
    photoOnly: prepared.photoOnly,
    clashes: clash.unexplained,
    draws: drawn.draws,
  };
  const considers = (id: ReadingId) => isConsidered(id, prepared.alterations);
  const place = claimedPlace(evaluation);
  const changes = quick ? [] : wouldChange(evaluation, leading);
  return {
    ok: true,
    output: {
      readings: readingsTold(probability, prepared, drawn.draws === 0 ? undefined : drawn.intervals),
      leading,
      ...firmness({
        ...grounds,
        probability: probability[leading],
        shareLeading: drawn.shareLeading,
        low: drawn.intervals[leading][0],
      }),
      making: makingFirst(making, drawn.making, grounds, shown, considers),
      condition: conditionOf(probability, parts),
      ...(place === undefined ? {} : { place }),
      unexplained: clash,
      years: {
        ...yearSummary(prepared.axis, massByBin(evaluation.model, evaluation.whole), prepared.yearNow),
        binding: yield* bindingLooks(evaluation, weights),
      },
      parts,
      alterations: weighAlterations(evaluation),
      shops: weighShops(evaluation),
      weights: weights.map((each) => ({
        ...refOf(each.look),
        state: each.look.state,
        ...(each.look.measured === undefined ? {} : { measured: true }),
        alone: each.alone,
        ...inWhole(each),
        ...(each.withoutShopFiles === undefined ? {} : { withoutShopFiles: each.withoutShopFiles }),
        periodAgainstLater: each.periodAgainstLater,
      })),
      rival: strongestRival(evaluation.posterior, leading),
      reasonGroups: (yield* reasonGroups(evaluation, weights, leading)).map((each) => ({
        cause: each.cause,
        findings: each.looks.map(refOf),
        ...inWhole(each),
      })),
      observations: weighObservations(evaluation, leading),
      altogether: {
        ...inWhole(weightInWhole(evaluation, leading, weights, before, before, evaluation.looks)),
        periodAgainstLater: weightBetween(evaluation.posterior, before, periodAndLater),
      },
      contradictions: yield* contradictions(
        evaluation,
        weights,
        leading,
        new Map(parts.map((part) => [part.id, part.origin['of-the-making'] ?? 1])),
      ),
      ...early,
      wouldChange: changes.map((each) => ({
        findings: each.turned.map(({ look, words }) => ({ ...refOf(look), otherwise: words })),
        to: each.to,
      })),
      wouldChangeTried: quick || changes.length > 0 ? '' : triedWords(prepared.looks.length),
      byStartingOdds: startingOddsEffect(prepared, evaluation.posterior),
      sensitivity: quick ? [] : sensitivity(layout, weights, leading),
      logEvidence:
        Math.log(Math.max(evaluation.posterior.total, Number.MIN_VALUE)) + evaluation.posterior.log,
      ignored: prepared.ignored,
      versions: { knowledge: knowledge.version, seed, draws: drawn.draws },
    },
  };
}

function refOf({ sign, part }: Look): { sign: string; part: string | null } {
  return { sign: sign.id, part: part === 'whole' ? null : part };
}

function inWhole({ withinWhole, againstRival, words, limit }: WeightInWhole): WeightInWhole {
  return { withinWhole, againstRival, words, ...(limit === undefined ? {} : { limit }) };
}

/** What to look at next within the case's limits, and a plan where the minutes are told. */
function looksFor(input: CaseToWeigh, prepared: PreparedCase): EarlyLooks {
  const answered = new Set(input.findings.map((each) => findingKey(each.sign, each.part)));
  const looks = withinLimits(nextLooks(prepared, answered), input.limits);
  const minutesLeft = input.limits?.minutesLeft;
  return minutesLeft === undefined
    ? { nextLooks: looks }
    : {
        nextLooks: looks,
        plan: lookPlan(looks, minutesLeft).map(({ look: { sign, part, bits }, minutesGone }) => ({
          sign,
          part,
          bits,
          minutesGone,
        })),
      };
}

function weighAlterations(evaluation: Evaluation): Weighing['alterations'] {
  const { layout } = evaluation.model;
  return layout.prepared.alterations
    .map((each) => ({ id: each.id, name: each.name, probability: shown(alterationShare(evaluation, each)) }))
    .sort((a, b) => b.probability - a.probability);
}

function weighShops(evaluation: Evaluation): Weighing['shops'] {
  const { model, whole, posterior } = evaluation;
  const { shops } = model.layout.prepared;
  const listed = shopProbabilities(model, whole, posterior.total);
  const rest = 1 - sum(listed);
  return [
    ...shops.map((shop, index) => ({ id: shop.id, name: shop.name, probability: shown(listed[index] ?? 0) })),
    { id: 'unlisted', name: 'No listed shop, or not period work', probability: shown(rest) },
  ].sort((a, b) => b.probability - a.probability);
}
