import { inSentence } from '../knowledge/inSentence.ts';
import { type ReadingId, readingIds, readingWords } from '../piece/readings.ts';
import { posteriorAtPart } from '../summation/atPart.ts';
import { wholeWith } from '../summation/evaluate.ts';
import type { Evaluation, ShopsWithout } from '../summation/evaluation.ts';
import { cliqueOfLook, posteriorIf } from '../summation/posteriorAfter.ts';
import { periodMass, shopPosterior } from '../summation/shopPosterior.ts';
import { type Origin, originWords } from './origins.ts';
import type { Weighing } from './weighing.ts';
import type { LookWeight } from './weights.ts';

type Explanation = Weighing['contradictions'][number]['explanations'][number];

/**
 * What makes a jarring finding at least `eased` (above 1) times as probable as `share`: other readings, shops, the part's origin,
 * alterations; of what is explained already no other reading is told.
 */
export function explanationsOf(
  evaluation: Evaluation,
  weight: LookWeight,
  share: number,
  eased: number,
  explained: boolean,
): Explanation[] {
  const all = [
    ...(explained ? [] : readingExplanations(weight)),
    ...shopExplanations(evaluation, weight),
    ...originExplanations(evaluation, weight),
    ...alterationExplanations(evaluation, weight),
  ];
  return all
    .filter((each) => each.share >= Math.max(share * eased, 0.1))
    .sort((a, b) => b.share - a.share)
    .slice(0, 6);
}

/**
 * The finding's share under one reading with no listed shop; undefined where it is surely not below a bound, or where all else
 * that was found leaves nothing of such work, so that no share of it can be told.
 */
export function shareUnlisted(
  evaluation: Evaluation,
  weight: LookWeight,
  reading: ReadingId,
  below: number,
): number | undefined {
  const withIt = shopPosterior(evaluation.model.layout, evaluation.whole);
  const unlisted = withIt[0]?.[reading] ?? 0;
  const all = withIt.reduce((sum, row) => sum + row[reading], 0);
  const whole = weight.shareUnder[reading];
  // P(finding | unlisted) = P(finding) · P(unlisted | finding) / P(unlisted), and the last is at most 1.
  if (whole * ratio(unlisted, all) >= below) return undefined;
  const before = shopsWithout(evaluation, weight);
  const left = before.posterior[0]?.[reading] ?? 0;
  return left > 0 ? ratio(unlisted * before.scale, left) : undefined;
}

/**
 * The finding's share under one reading if its part is of the making; undefined where it is of no single part, or where all
 * else that was found leaves nothing of that.
 */
export function shareIfOwn(
  evaluation: Evaluation,
  weight: LookWeight,
  reading: ReadingId,
): number | undefined {
  const { look } = weight;
  if (look.part === 'whole' || look.sign.hangsOn.startsWith('alteration/')) return undefined;
  // Both on the scale of what all else says to the part, which its own findings do not touch.
  const withIt = posteriorAtPart(evaluation, look.part, evaluation.looks, 'own');
  const without = posteriorAtPart(evaluation, look.part, others(evaluation, weight), 'own');
  const left = without.readings[reading];
  return left > 0 ? ratio(withIt.readings[reading], left) : undefined;
}

function readingExplanations(weight: LookWeight): Explanation[] {
  return readingIds.map((id) => ({
    kind: 'reading',
    id,
    words: `If it were ${readingWords[id].inSentence}.`,
    share: weight.shareUnder[id],
  }));
}

function shopExplanations(evaluation: Evaluation, weight: LookWeight): Explanation[] {
  if (weight.look.sign.hangsOn !== 'making') return [];
  const { layout } = evaluation.model;
  const withIt = shopPosterior(layout, evaluation.whole);
  return layout.prepared.shops.map((shop, index) => {
    const { posterior: without, scale } = shopsWithout(evaluation, weight);
    return {
      kind: 'shop',
      id: shop.id,
      words: `If it is work of ${shop.name}, ${shop.place}: there it is the habit.`,
      share: ratio(periodMass(withIt[index + 1]) * scale, periodMass(without[index + 1])),
    };
  });
}

function originExplanations(evaluation: Evaluation, weight: LookWeight): Explanation[] {
  const { look } = weight;
  const { layout } = evaluation.model;
  const part = layout.prepared.parts.find((each) => each.id === look.part);
  if (part?.renewed === undefined || look.sign.hangsOn.startsWith('alteration/')) return [];
  const sources: [string, Origin][] = [
    ['renewed', 'repair'],
    ['reused', 'other-old'],
  ];
  return sources.map(([source, origin]) => {
    const withIt = posteriorAtPart(evaluation, look.part, evaluation.looks, source);
    const without = posteriorAtPart(evaluation, look.part, others(evaluation, weight), source);
    const share = ratio(withIt.total, without.total);
    return { kind: 'origin', id: origin, words: `If the ${part.name} is ${originWords[origin]}.`, share };
  });
}

function alterationExplanations(evaluation: Evaluation, weight: LookWeight): Explanation[] {
  const cause = weight.look.sign.hangsOn;
  const alteration = evaluation.model.layout.prepared.alterations.find(
    (each) => cause === `alteration/${each.id}`,
  );
  if (alteration === undefined || cliqueOfLook(evaluation.model.layout, weight.look) < 0) return [];
  const withIt = posteriorIf(evaluation, alteration, true, evaluation.looks);
  const without = posteriorIf(evaluation, alteration, true, others(evaluation, weight));
  const share = ratio(withIt.total, without.total);
  return [
    {
      kind: 'alteration',
      id: alteration.id,
      words: `If this happened: ${inSentence(alteration.name)}.`,
      share,
    },
  ];
}

function others(evaluation: Evaluation, weight: LookWeight) {
  return evaluation.looks.filter((each) => each !== weight.look);
}

/** The shops' posterior without a finding of the making, and what brings those with it to the same scale. */
function shopsWithout(evaluation: Evaluation, weight: LookWeight): ShopsWithout {
  return evaluation.worked.once('shopsWithout', weight.look.key, () => {
    const { layout } = evaluation.model;
    const whole = wholeWith(evaluation, cliqueOfLook(layout, weight.look), others(evaluation, weight));
    return { posterior: shopPosterior(layout, whole), scale: Math.exp(evaluation.whole.log - whole.log) };
  });
}

/** The share of a mass that is left; none of nothing. */
function ratio(mass: number, before: number): number {
  return Math.min(1, mass / Math.max(before, Number.MIN_VALUE));
}
