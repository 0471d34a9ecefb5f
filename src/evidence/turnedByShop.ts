import { type ReadingId, readingWords } from '../piece/readings.ts';
import { scaleBand } from './verbalScale.ts';
import type { Weighing } from './weighing.ts';

type Weight = Pick<Weighing['weights'][number], 'withinWhole' | 'withoutShopFiles'>;

/**
 * What a habit would weigh if no shop file were known, and what it weighs with the file: the sentence that shows a
 * contradiction become a proof. Undefined where no shop file holds the habit or the file turns nothing.
 */
export function turnedByShop(weight: Weight, leading: ReadingId): string | undefined {
  const { withinWhole, withoutShopFiles } = weight;
  if (withinWhole === null || withoutShopFiles === undefined) return undefined;
  if (Math.abs(withinWhole - withoutShopFiles) < 3) return undefined;
  return `If no shop’s file were known it would speak ${side(withoutShopFiles, leading)}; with the file it speaks ${side(withinWhole, leading)}.`;
}

function side(decibans: number, leading: ReadingId): string {
  const whole = Math.round(decibans);
  if (whole === 0) return 'for neither (0 decibans)';
  const signed = `${whole > 0 ? '+' : '−'}${Math.abs(whole)}`;
  return `${scaleBand(decibans).adverb} for ${decibans > 0 ? readingWords[leading].inSentence : 'another reading'} (${signed} decibans)`;
}
