import { isSupport, scaleBand } from './verbalScale.ts';
import type { Weighing } from './weighing.ts';

type Weight = Pick<Weighing['weights'][number], 'periodAgainstLater' | 'withoutShopFiles'>;

/**
 * What a habit would weigh if no shop file were known, and what it weighs with the file: the sentence that shows a
 * contradiction become a proof. A habit speaks of the making, so both are for period work against later. Undefined where no shop file holds the habit or the file turns nothing.
 */
export function turnedByShop(weight: Weight): string | undefined {
  const { withoutShopFiles } = weight;
  const { withinWhole } = weight.periodAgainstLater;
  if (withinWhole === null || withoutShopFiles === undefined) return undefined;
  if (Math.abs(withinWhole - withoutShopFiles) < 3) return undefined;
  return `If no shop’s file were known it would speak ${side(withoutShopFiles)}; with the file it speaks ${side(withinWhole)}.`;
}

function side(decibans: number): string {
  const whole = Math.round(decibans);
  const signed = whole === 0 ? '0' : `${whole > 0 ? '+' : '−'}${Math.abs(whole)}`;
  const favored = decibans > 0 ? ' for a period piece' : ' for a later piece';
  return `${scaleBand(decibans).adverb}${isSupport(decibans) ? favored : ''} (${signed} decibans)`;
}
