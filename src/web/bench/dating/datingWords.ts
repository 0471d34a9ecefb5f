import type { datingSpanCalculation } from '../../../calculations/dating.ts';
import type { OutputOf } from '../../../calculations/runCalculation.ts';
import { inSentence } from '../../../knowledge/inSentence.ts';
import { probablyThat, toldShares } from '../../../weighing/probabilityWords.ts';
import { listed } from '../../shell/listed.ts';

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

/**
 * The curve as the points of a line, closed at its foot.
 *
 * @returns the stretch of years that is worth drawing, out to whole quarter centuries, and the points, the highest at `height` above the foot
 */
export function datingCurve(
  density: DatingFound['density'],
  width: number,
  height: number,
): { from: number; to: number; points: string } {
  const most = Math.max(...density.map(([, share]) => share));
  const told = density.filter(([, share]) => share > 0.005 * most).map(([year]) => year);
  const from = Math.floor(Math.min(...told) / 25) * 25;
  const to = Math.ceil((Math.max(...told) + 1) / 25) * 25;
  const x = (year: number) => ((width * (year - from)) / (to - from)).toFixed(1);
  const shown = density.filter(([year]) => year >= from && year <= to);
  const line = shown.map(([year, share]) => `${x(year)},${(height * (1 - share / most)).toFixed(1)}`);
  const [first, last] = [shown[0]?.[0] ?? from, shown.at(-1)?.[0] ?? to];
  return { from, to, points: [`${x(first)},${height}`, ...line, `${x(last)},${height}`].join(' ') };
}

function yearsWords(years: number): string {
  const whole = Math.round(years);
  return whole === 1 ? 'a year' : `${whole} years`;
}
