import type { OutputOf } from '../../../calculations/runCalculation.ts';
import type { wearContact } from '../../../calculations/wearContact.ts';
import { basisWord } from '../../../knowledge/basisWord.ts';
import { told } from '../../../units/doubt.ts';
import type { Findings } from '../benchContext.ts';
import { type Painting, surfaceKey } from './painting.ts';

/** What `wear.contact` gives back: surfaces, and how painted wear agrees with use. */
export type WearContact = OutputOf<typeof wearContact>;
export type WearSurface = WearContact['surfaces'][number];
export type WearScore = NonNullable<WearContact['score']>;

/** How often a part is touched, from 1 hardly to 4 at nearly every use. */
export function oftenLevel(per100Uses: number): 1 | 2 | 3 | 4 {
  return per100Uses >= 60 ? 4 : per100Uses >= 20 ? 3 : per100Uses >= 5 ? 2 : 1;
}

/** The words of those levels. */
export const oftenWords = {
  1: 'hardly ever',
  2: 'now and then',
  3: 'often',
  4: 'at most uses',
} as const;

/** Contrary faces that were truly painted so: a sharp face only where *sharp* was painted, not where wear was merely not seen. */
export function contraryPainted(
  contrary: WearScore['contrary'],
  painting: Painting,
  surfaces: readonly WearSurface[],
): WearScore['contrary'] {
  return contrary.filter(
    ({ part, face, what }) =>
      what === 'worn where nothing touches' ||
      surfaces.some(
        (surface) =>
          surface.part === part &&
          painting[surfaceKey(surface)]?.[surface.faces.indexOf(face)]?.includes('sharp') === true,
      ),
  );
}

/** What the painted wear says, in sentences. */
export function wearWords(
  score: WearScore,
  contrary: WearScore['contrary'],
  nameOf: (part: string) => string,
  findings: Findings | undefined,
): string {
  const agreed = score.auc === null ? evenWords(score) : agreementWords(score.auc, score.aucSigma ?? 0);
  const against = contrary.map(({ part, face, what }) => `${nameOf(part)}, ${face}: ${what}.`);
  const telling =
    contrary.length === 0
      ? []
      : [...against, 'Worn underneath and sharp on top is as telling as no wear: ask what made it.'];
  return [agreed, ...telling, ...oddsWords(findings)].join(' ');
}

function evenWords({ worn }: WearScore): string {
  return worn === 'nowhere'
    ? 'Nothing is worn, though use would have touched it.'
    : 'Everything is worn alike, where use would wear some places more than others.';
}

function agreementWords(auc: number, sigma: number): string {
  const how =
    auc >= 0.8
      ? 'The wear lies where use would put it'
      : auc >= 0.65
        ? 'The wear follows use in part'
        : auc >= 0.4
          ? `The wear follows use ${auc < 0.5 ? 'no' : 'hardly'} better than chance would`
          : 'The wear lies where use would not put it';
  return `${how}: of 100 pairs of a worn and an unworn place, the worn one is the more touched in ${Math.round(100 * auc)}, give or take ${Math.round(100 * told(sigma))}; chance would make it 50.`;
}

function oddsWords(findings: Findings | undefined): string[] {
  const { natural, none, imitated } = findings?.findings[0]?.likelihoods ?? {};
  if (natural === undefined || none === undefined || imitated === undefined) return [];
  const [first, second] = [
    { name: 'wear come with time and use', value: natural },
    { name: 'no use', value: none },
    { name: 'wear put on', value: imitated },
  ].toSorted((a, b) => b.value - a.value) as [
    { name: string; value: number },
    { name: string; value: number },
  ];
  const times = first.value / second.value;
  if (times < 1.25) return ['It does not tell use from wear put on.'];
  const most = findings?.mostRatio ?? null;
  const held = most === null ? '' : `, and never more than ${most}`;
  return [
    `That is ${times.toFixed(1).replace(/\.0$/, '')} times as probable of ${first.name} as of ${second.name}; by ${basisWord(findings?.basis.by)}${held}.`,
  ];
}
