import { type ReadingId, readingIds, readingWords } from '../piece/readings.ts';
import { massesAtPart } from './atPart.ts';
import { type Evaluation, evaluate, wholeWith } from './evaluation.ts';
import type { Factor } from './factor.ts';
import { massesIf, unitOfLook } from './massesAfter.ts';
import { fixModel } from './model.ts';
import type { Origin } from './partPosterior.ts';
import { periodMass, shopMasses } from './shopMasses.ts';
import type { Weighing } from './weighing.ts';
import type { LookWeight } from './weights.ts';

type Explanation = Weighing['contradictions'][number]['explanations'][number];

export const originWords: Record<Origin, string> = {
  'of-the-making': 'of the making',
  repair: 'an honest later repair',
  improve: 'put in later, to improve',
  'other-old': 'from another old piece',
};

/** What makes a jarring finding at least `eased` times as probable as `share`: readings, shops, the part's origin, alterations. */
export function explanationsOf(
  evaluation: Evaluation,
  weight: LookWeight,
  leading: ReadingId,
  share: number,
  eased: number,
): Explanation[] {
  const all = [
    ...readingExplanations(weight, leading),
    ...shopExplanations(evaluation, weight),
    ...originExplanations(evaluation, weight),
    ...alterationExplanations(evaluation, weight),
  ];
  return all
    .filter((each) => each.share >= Math.max(share * eased, 0.1))
    .sort((a, b) => b.share - a.share)
    .slice(0, 6);
}

/** The finding's share under one reading and shop, and under that reading with no listed shop. */
export function shareByShop(evaluation: Evaluation, weight: LookWeight, reading: ReadingId): number[] {
  const withIt = shopMasses(evaluation.model.layout, evaluation.whole);
  const { whole, log } = wholeWithout(evaluation, weight);
  const without = shopMasses(evaluation.model.layout, whole);
  const scale = Math.exp(evaluation.whole.log - log);
  return withIt.map((row, shop) => ratio(row[reading] * scale, without[shop]?.[reading] ?? 0));
}

/** The finding's share under one reading if its part is of the making; undefined where it is of no single part. */
export function shareIfOwn(
  evaluation: Evaluation,
  weight: LookWeight,
  reading: ReadingId,
): number | undefined {
  const { look } = weight;
  if (look.part === 'whole' || look.sign.hangsOn.startsWith('alteration/')) return undefined;
  const withIt = massesAtPart(evaluation, look.part, evaluation.looks, 'own');
  const without = massesAtPart(evaluation, look.part, others(evaluation, weight), 'own');
  return ratio(withIt.readings[reading] * Math.exp(withIt.log - without.log), without.readings[reading]);
}

function readingExplanations(weight: LookWeight, leading: ReadingId): Explanation[] {
  return readingIds
    .filter((id) => id !== leading)
    .map((id) => ({
      kind: 'reading',
      id,
      words: `If it were ${readingWords[id].inSentence}.`,
      share: weight.shareUnder[id],
    }));
}

function shopExplanations(evaluation: Evaluation, weight: LookWeight): Explanation[] {
  const { prepared } = evaluation.model.layout;
  if (weight.look.sign.hangsOn !== 'making' || prepared.shops.length === 0) return [];
  const withIt = shopMasses(evaluation.model.layout, evaluation.whole);
  const { whole, log } = wholeWithout(evaluation, weight);
  const without = shopMasses(evaluation.model.layout, whole);
  const scale = Math.exp(evaluation.whole.log - log);
  return prepared.shops.map((shop, index) => ({
    kind: 'shop',
    id: shop.id,
    words: `If it is work of ${shop.name}, ${shop.place}: there it is the habit.`,
    share: ratio(periodMass(withIt[index + 1]) * scale, periodMass(without[index + 1])),
  }));
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
    const withIt = massesAtPart(evaluation, look.part, evaluation.looks, source);
    const without = massesAtPart(evaluation, look.part, others(evaluation, weight), source);
    const share = ratio(withIt.total * Math.exp(withIt.log - without.log), without.total);
    return { kind: 'origin', id: origin, words: `If the ${part.name} is ${originWords[origin]}.`, share };
  });
}

function alterationExplanations(evaluation: Evaluation, weight: LookWeight): Explanation[] {
  const cause = weight.look.sign.hangsOn;
  const alteration = evaluation.model.layout.prepared.alterations.find(
    (each) => cause === `alteration/${each.id}`,
  );
  if (alteration === undefined || unitOfLook(evaluation.model.layout, weight.look) < 0) return [];
  const withIt = massesIf(evaluation, alteration, true, evaluation.looks);
  const without = massesIf(evaluation, alteration, true, others(evaluation, weight));
  const share = ratio(withIt.total * Math.exp(withIt.log - without.log), without.total);
  return [
    {
      kind: 'alteration',
      id: alteration.id,
      words: `If this happened: ${alteration.name.toLowerCase()}.`,
      share,
    },
  ];
}

function others(evaluation: Evaluation, weight: LookWeight) {
  return evaluation.looks.filter((each) => each !== weight.look);
}

function wholeWithout(evaluation: Evaluation, weight: LookWeight): { whole: Factor; log: number } {
  const looks = others(evaluation, weight);
  const unit = unitOfLook(evaluation.model.layout, weight.look);
  const whole =
    unit >= 0
      ? wholeWith(evaluation, unit, looks)
      : evaluate(fixModel(evaluation.model.layout, evaluation.model.draw, looks), looks).whole;
  return { whole, log: whole.log };
}

function ratio(mass: number, before: number): number {
  return before > 0 ? Math.min(1, mass / before) : 0;
}
