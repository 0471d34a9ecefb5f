import type { datingSpanCalculation } from '../../../calculations/dating.ts';
import type { OutputOf } from '../../../calculations/runCalculation.ts';
import { listed } from '../../../ground/words.ts';
import { inSentence } from '../../../knowledge/inSentence.ts';
import { probablyThat, toldShares } from '../../../weighing/probabilityWords.ts';

/** What `dating.span` gives back. */
export type DatingFound = OutputOf<typeof datingSpanCalculation>;

/** The span in sentences, and which sign holds which end. */
export function datingWords(found: DatingFound, nameOf: (sign: string) => string): string {
  const span = ([from, to]: readonly [number, number]) => `${Math.round(from)} and ${Math.round(to)}`;
  const held = (['from', 'to'] as const).flatMap((end) => {
    const signs = found.binding.filter((each) => each.end === end);
    if (signs.length === 0) return [];
    const named = signs.map(({ sign, byYears }) => `“${nameOf(sign)}” (by ${yearsWords(byYears)})`);
    return [`The ${end === 'from' ? 'early' : 'late'} end is held by ${listed(named)}.`];
  });
  return [
    `${probablyThat(toldShares.most, `between ${span(found.p90)}`)}; ${inSentence(probablyThat(toldShares.half, `between ${span(found.p50)}`))}.`,
    ...held,
  ].join(' ');
}

function yearsWords(years: number): string {
  const whole = Math.round(years);
  return whole === 1 ? 'a year' : `${whole} years`;
}
