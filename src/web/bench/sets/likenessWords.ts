import type { OutputOf } from '../../../calculations/runCalculation.ts';
import type { setsLikeness } from '../../../calculations/setsLikeness.ts';
import { listed } from '../../../ground/words.ts';
import { inSentence } from '../../../knowledge/inSentence.ts';
import { told } from '../../../units/doubt.ts';
import { formatInches, formatMm } from '../../../units/length.ts';

/** What `sets.likeness` gives back. */
export type Likeness = OutputOf<typeof setsLikeness>;
type Width = NonNullable<Likeness['armchairWidth']['seat']>;

/** What members side by side say, in sentences. */
export function likenessWords(found: Likeness): string {
  const { outliers, groups, judged } = found;
  if (!judged)
    return [
      'Sizes out of a catalogue are rough to about 2 cm: they are set side by side, and nothing is judged by them.',
      ...widthWords(found),
    ].join(' ');
  const out = outliers.map(
    ({ id, measure, valueMm, medianMm }) =>
      `${id} stands out in ${inSentence(measure)}: ${inches(valueMm)} where the others have about ${inches(medianMm)}.`,
  );
  return [
    ...(out.length > 0 ? out : ['No member stands out among its own kind.']),
    groupWords(groups),
    ...widthWords(found),
  ].join(' ');
}

/** Which members go together. */
function groupWords(groups: readonly string[][]): string {
  const many = groups.filter((group) => group.length > 1);
  const alone = groups.filter((group) => group.length === 1).flat();
  if (many.length === 0) return 'No two of them agree in every measure.';
  const together = many.map((group) => listed(group)).join('; ');
  return `${together} go together${alone.length === 0 ? '' : `; ${listed(alone)} ${alone.length === 1 ? 'stands' : 'stand'} alone`}.`;
}

/** How much wider the armchairs are, by both rules. */
function widthWords({ armchairWidth: { overall, seat } }: Likeness): string[] {
  const wider = ({ differenceMm, sigmaMm }: Width) =>
    `${inches(Math.abs(differenceMm))} ${differenceMm < 0 ? 'narrower' : 'wider'} (${formatMm(Math.abs(differenceMm), 0)}, give or take ${formatMm(told(sigmaMm), 0)})`;
  return [
    ...(seat === undefined ? [] : [`The armchairs’ seats are ${wider(seat)}.`]),
    ...(overall === undefined ? [] : [`Over all, arms and all, the armchairs are ${wider(overall)}.`]),
  ];
}

function inches(mm: number): string {
  return `${formatInches(mm, { denominator: 16 })} in`;
}
