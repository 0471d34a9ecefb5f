import type { OutputOf } from '../../../calculations/runCalculation.ts';
import type { worthDivision } from '../../../calculations/worthDivision.ts';
import { listed } from '../../../ground/words.ts';
import { formatMoney } from '../../../units/money.ts';
import type { DivisionProperty } from '../../../worth/divideEstate.ts';

export type Division = OutputOf<typeof worthDivision>;

/** What each property says to a person. */
export const propertyWords: Record<DivisionProperty, string> = {
  proportional: 'Each has an equal part or more, by their own figures.',
  'envy-free': 'Nobody would rather have another’s share.',
  'envy-free-up-to-one':
    'Where one would rather have another’s share, it is for a single piece or set in it.',
  'equal-gain': 'All gain alike over an equal part.',
  efficient: 'No other division is better for one and worse for none.',
  'least-is-highest': 'Whoever has least has as much as any division could give them.',
};

/** Who gets what and who pays what, a line for each heir. */
export function shareLines({ shares, toPay, split }: Division): { heir: string; words: string }[] {
  return Object.entries(shares).map(([heir, items]) => {
    const whole = items.filter((item) => split?.items.includes(item) !== true);
    const part = split === undefined ? 0 : (split.parts[heir] ?? 0);
    const had = [
      ...whole,
      ...(split === undefined || part === 0
        ? []
        : [`${Math.round(part * 1000) / 10} in 100 of ${listed(split.items)}`]),
    ];
    const sum = Math.round((toPay[heir] ?? 0) * 100);
    const money = sum === 0 ? '' : sum > 0 ? `; receives ${formatMoney(sum)}` : `; pays ${formatMoney(-sum)}`;
    return { heir, words: `${had.length === 0 ? 'no piece' : listed(had)}${money}` };
  });
}

/** The division in a sentence for the record. */
export function divisionWords(found: Division, method: string): string {
  const shares = shareLines(found).map(({ heir, words }) => `${heir}: ${words}`);
  return `By ${method}: ${shares.join('. ')}.`;
}
