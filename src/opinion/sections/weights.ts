import { scaleBand, verbalScale, weightWords } from '../../evidence/verbalScale.ts';
import type { Weighing } from '../../evidence/weighing.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { totalWeight } from '../totalWeight.ts';
import { decibanWords, listed, stopped } from '../wording.ts';

type Weight = Pick<Weighing['weights'][number], 'sign' | 'part' | 'state'> & {
  alone: number;
  withinWhole: number;
};

/** A finding's weight for a period piece against a later one; where a hard limit leaves a side nothing, none. */
function periodWeight(weight: Weighing['weights'][number]): Weight {
  const { sign, part, state, periodAgainstLater } = weight;
  return {
    sign,
    part,
    state,
    alone: periodAgainstLater.alone ?? 0,
    withinWhole: periodAgainstLater.withinWhole ?? 0,
  };
}

const sides = ['a period piece', 'a later piece'] as const;

/** What each finding speaks for and how strongly, in words and decibans, with the scale the words are taken from. */
export function weightsSection(material: OpinionMaterial): Section | undefined {
  const { weighing } = material;
  if (weighing === undefined || weighing.weights.length === 0) return undefined;
  const all = weighing.weights.map(periodWeight);
  const heavy = all
    .filter((each) => Math.abs(each.alone) >= 1)
    .toSorted((a, b) => Math.abs(b.alone) - Math.abs(a.alone));
  const mute = all.filter((each) => !heavy.includes(each));
  return {
    id: 'weights',
    title: 'What speaks for and against',
    blocks: [
      {
        kind: 'paragraph',
        words: [
          'Two propositions were weighed against each other: that the main body is ',
          { strong: 'a period piece' },
          ', whatever was done to it later, and that it is ',
          { strong: 'a later piece' },
          ', be it a copy by hand, a copy by machine, or made to pass as older. The weight of a finding says how much more probable the finding is if the one is true than if the other is. + is for a period piece, − for a later piece.',
        ],
      },
      ...weightTable(
        'What speaks for a period piece',
        heavy.filter((each) => each.alone > 0),
        material,
      ),
      ...weightTable(
        'What speaks for a later piece',
        heavy.filter((each) => each.alone < 0),
        material,
      ),
      ...(mute.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              as: 'note',
              words: `Of no weight either way by themselves: ${listed(mute.map((each) => whereWords(each, material)))}.`,
            } satisfies Block,
          ]),
      ...ignoredBlocks(material),
      ...altogether(material),
      ...scaleBlocks(),
    ],
  };
}

function whereWords(weight: Pick<Weight, 'sign' | 'part'>, { signName, partName }: OpinionMaterial): string {
  return weight.part === null
    ? `“${signName(weight.sign)}”`
    : `“${signName(weight.sign)}” on the ${partName(weight.part)}`;
}

function weightTable(caption: string, weights: readonly Weight[], material: OpinionMaterial): Block[] {
  if (weights.length === 0)
    return [{ kind: 'paragraph', as: 'note', words: `${caption}: none of the findings.` }];
  const rows = weights.map((weight): Words[] => [
    [
      material.signName(weight.sign),
      weight.state === 'absent' ? { em: ', absent' } : '',
      ` – ${material.partName(weight.part)}`,
    ],
    scaleBand(weight.alone).words,
    decibanWords(weight.alone),
    decibanWords(weight.withinWhole),
  ]);
  return [
    {
      kind: 'table',
      caption,
      columns: [
        { name: 'Finding', share: 5.6 },
        { name: 'By itself, in words', share: 2.8 },
        { name: 'By itself, decibans', share: 1.5, end: true },
        { name: 'Within the whole', share: 1.5, end: true },
      ],
      groups: [{ rows }],
    },
  ];
}

function ignoredBlocks(material: OpinionMaterial): Block[] {
  const ignored = material.weighing?.ignored ?? [];
  if (ignored.length === 0) return [];
  return [
    {
      kind: 'list',
      items: ignored.map((each) => `Not weighed: ${whereWords(each, material)}. ${stopped(each.why)}`),
    },
  ];
}

function altogether({ weighing, knowledge, piece }: OpinionMaterial): Block[] {
  if (weighing === undefined) return [];
  const total = totalWeight(weighing, knowledge.making, piece.startingOdds);
  const words: Words[] = [
    'A weight within the whole is what taking the finding out of everything else would change. It is smaller than the weight by itself where other findings say the same thing for the same cause (they are counted once), and can turn round where another finding changes what it means. Single weights therefore do not add up to the whole.',
  ];
  if (total !== undefined)
    words.push([
      `Taken together the findings give ${total.atLeast ? 'at least ' : ''}`,
      { strong: weightWords(total.decibans, ...sides) },
      total.atLeast
        ? `: ${Math.floor(Math.abs(total.decibans))} decibans or more. The weight is given as a bound because no probability is printed beyond 999 in 1000.`
        : `: about ${Math.abs(Math.round(total.decibans))} decibans.`,
    ]);
  words.push([
    { strong: 'A likelihood ratio is not the probability of either proposition. ' },
    'It says how probable the findings are if the piece is the one thing or the other. How probable the piece itself is of the period hangs also on what was to be expected before anything was seen, which lies outside the examination: see “The readings”.',
  ]);
  return [
    { kind: 'heading', words: 'Taken together' },
    ...words.map((each): Block => ({ kind: 'paragraph', words: each })),
  ];
}

function scaleBlocks(): Block[] {
  const bound = (from: number, to: number | null) => (to === null ? `${from} and more` : `${from} to ${to}`);
  const ratio = (from: number, to: number | null) => {
    const number = (decibans: number) =>
      `${Math.round(10 ** (decibans / 10) * 10) / 10}`.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
    return to === null ? `${number(from)} and more` : `${number(from)} to ${number(to)}`;
  };
  return [
    {
      kind: 'table',
      caption: `${verbalScale.name}: the words used in this document`,
      columns: [
        { name: 'Words', share: 4 },
        { name: 'Decibans', share: 3 },
        { name: 'Times more probable', share: 3 },
      ],
      groups: [
        {
          rows: verbalScale.bands.map((band) => [
            band.words,
            bound(band.fromDecibans, band.toDecibans),
            ratio(band.fromDecibans, band.toDecibans),
          ]),
        },
      ],
    },
    {
      kind: 'paragraph',
      as: 'note',
      words: `${verbalScale.standing} A deciban is ten times the base-ten logarithm of the likelihood ratio: 10 decibans are 10 times, 20 are 100 times. Weights are judged, so none is given finer than a whole deciban.`,
    },
  ];
}
