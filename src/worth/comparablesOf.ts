import type { Piece } from '../piece/piece.ts';
import type { PriceAdjustment, PriceComparable } from '../piece/worth.ts';

/** Comparables that can be reckoned with, as `worth.comparables` asks for them, and what each of the others lacks. */
export type AskedComparables = {
  asked: { id: string; comparable: ReturnType<typeof askedComparable> }[];
  lacking: { id: string; name: string; what: string[] }[];
};

/** Sorts the sales of a piece into those that are whole and those that lack a price, a date, a premium or a reason. */
export function comparablesOf({
  comparables,
  worth,
}: Pick<Piece, 'comparables' | 'worth'>): AskedComparables {
  const found: AskedComparables = { asked: [], lacking: [] };
  for (const each of Object.values(comparables)) {
    const what = lacks(each, worth.basis === 'with-premium');
    if (what.length > 0)
      found.lacking.push({ id: each.id, name: each.name.trim() || 'A sale not yet named', what });
    else found.asked.push({ id: each.id, comparable: askedComparable(each) });
  }
  return found;
}

function lacks(
  { priceCents, date, premiumIncluded, premiumPercent, adjustments }: PriceComparable,
  wantsPremium: boolean,
): string[] {
  return [
    priceCents === undefined || priceCents === 0 ? 'its price' : '',
    /^\d{4}(-\d{2}(-\d{2})?)?$/.test(date) ? '' : 'its date, as 2024, 2024-05 or 2024-05-31',
    premiumIncluded !== wantsPremium && premiumPercent === undefined
      ? 'the premium of that sale in percent'
      : '',
    adjustments.some(({ why }) => why.trim() === '') ? 'the reason of an adjustment' : '',
    adjustments.some(({ percent, cents }) => percent === undefined && cents === undefined)
      ? 'the size of an adjustment'
      : '',
  ].filter((each) => each !== '');
}

function askedComparable({
  name,
  priceCents,
  date,
  premiumIncluded,
  premiumPercent,
  adjustments,
  weight,
}: PriceComparable) {
  return {
    ...(name.trim() === '' ? {} : { name: name.trim() }),
    price: (priceCents as number) / 100,
    date,
    premiumIncluded,
    ...(premiumPercent === undefined ? {} : { premiumPercent }),
    adjustments: adjustments.map(askedAdjustment),
    weight,
  };
}

function askedAdjustment({ why, percent, cents, of }: PriceAdjustment) {
  return { why, of, ...(percent === undefined ? { amount: (cents as number) / 100 } : { percent }) };
}
