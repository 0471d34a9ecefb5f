import { mostOfObservation } from '../../evidence/readingWeights.ts';
import { capital, counted, listed } from '../../ground/words.ts';
import { readingWords } from '../../piece/readings.ts';
import { demonstratedWords } from '../../weighing/demonstratedWords.ts';
import { ownWords } from '../../weighing/ownWords.ts';
import { type Reason, reasonsOf } from '../../weighing/reasons.ts';
import { reasonInWords } from '../../weighing/reasonWords.ts';
import { boundsInWords, ratioToOne, scaleBand, verbalScale } from '../../weighing/verbalScale.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import type { Block, Run, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { decibanWords, stopped } from '../wording.ts';

type Weight = Weighing['weights'][number];

/** Why the leading reading leads, findings of one cause together, in words first and decibans beside them, with the scale. */
export function weightsSection(material: OpinionMaterial): Section | undefined {
  const { weighing } = material;
  if (weighing === undefined || weighing.weights.length + weighing.observations.length === 0)
    return undefined;
  const leading = readingWords[weighing.leading].inSentence;
  const { forIt, againstIt, limits, neither } = reasonsOf(weighing);
  const mute = neither.flatMap(({ findings, own }) => [
    ...findings.map((each) => whereWords(each, material)),
    ...(own === undefined ? [] : [ownWords(own, material.piece, 'the examiner’s')]),
  ]);
  return {
    id: 'weights',
    title: 'What speaks for and against',
    appendix: true,
    blocks: [
      {
        kind: 'paragraph',
        words: [
          'The reading that the findings lead to, ',
          { strong: leading },
          ', was weighed against all the others together, and against its strongest rival, ',
          { strong: readingWords[weighing.rival].inSentence },
          '. A weight says how much taking the finding out of everything else would change; findings that share a cause are counted together, once. + is for the reading, − against it.',
        ],
      },
      ...reasonTable(`What speaks for ${leading}`, forIt, material),
      ...reasonTable('What speaks against it', againstIt, material),
      ...limitBlocks(limits, weighing, material),
      ...(mute.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              as: 'note',
              words: `Too little either way to count as support, all else taken in: ${listed(mute)}.`,
            } satisfies Block,
          ]),
      ...ownBlocks(weighing),
      ...ignoredBlocks(material),
      ...altogether(weighing),
      ...scaleBlocks(),
    ],
  };
}

function whereWords(weight: Pick<Weight, 'sign' | 'part'>, { signName, partName }: OpinionMaterial): string {
  return weight.part === null
    ? `“${signName(weight.sign)}”`
    : `“${signName(weight.sign)}” on the ${partName(weight.part)}`;
}

function reasonTable(caption: string, reasons: readonly Reason[], material: OpinionMaterial): Block[] {
  if (reasons.length === 0)
    return [{ kind: 'paragraph', as: 'note', words: `${caption}: none of the findings.` }];
  return [
    {
      kind: 'table',
      caption,
      columns: [
        { name: 'Reason', share: 5.4 },
        { name: 'In words', share: 2.8 },
        { name: 'Decibans', share: 1.4, end: true },
        { name: 'Against the rival', share: 1.6, end: true },
      ],
      groups: [{ rows: reasons.flatMap((reason) => rowsOf(reason, material)) }],
    },
  ];
}

/** One row for a single finding; for several of one cause, what they do together and beneath it what each does taken out alone. */
function rowsOf(reason: Reason, material: OpinionMaterial): Words[][] {
  const numbers = ({ withinWhole, againstRival }: Pick<Weight, 'withinWhole' | 'againstRival'>) => [
    withinWhole === null ? '' : decibanWords(withinWhole),
    againstRival === null ? '' : decibanWords(againstRival),
  ];
  const inWords = reason.withinWhole === null ? '' : scaleBand(reason.withinWhole).words;
  const finding = (weight: Weight): Run[] => [
    material.signName(weight.sign),
    weight.state === 'absent' ? { em: ', absent' } : '',
    ` – ${material.partName(weight.part)}`,
  ];
  if (reason.own !== undefined)
    return [[[{ em: ownWords(reason.own, material.piece, 'the examiner’s') }], inWords, ...numbers(reason)]];
  if (reason.cause === undefined)
    return reason.findings.map((weight) => [finding(weight), inWords, ...numbers(reason)]);
  return [
    [
      [{ strong: capital(reason.cause.name) }, `: ${counted(reason.findings.length, 'finding')} together`],
      inWords,
      ...numbers(reason),
    ],
    ...reason.findings.map((weight): Words[] => [
      ['· ', ...finding(weight)],
      [{ em: 'taken out alone' }],
      ...numbers(weight),
    ]),
  ];
}

function limitBlocks(limits: readonly Reason[], weighing: Weighing, material: OpinionMaterial): Block[] {
  if (limits.length === 0) return [];
  return [
    {
      kind: 'list',
      items: limits.map((reason) =>
        stopped(
          reasonInWords(reason, weighing.leading, {
            finding: (weight) => whereWords(weight, material),
            own: (id) => ownWords(id, material.piece, 'the examiner’s'),
          }),
        ),
      ),
    },
  ];
}

/** Where something of the examiner’s own was weighed: whose judgment it is and how far it can count. */
function ownBlocks({ observations }: Weighing): Block[] {
  if (observations.length === 0) return [];
  return [
    {
      kind: 'paragraph',
      as: 'note',
      words: `What is called the examiner’s own is no finding of a sign in the knowledge files. An observation is weighed by how far the examiner would expect it of each kind of piece, with wide ranges, and counts at most ${mostOfObservation} to 1 for one reading against another.`,
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

function altogether({ altogether: all, leading }: Weighing): Block[] {
  const words: Words[] = [
    'A finding can weigh less taken out alone than by itself, where others say the same for the same cause, and can turn round where another changes what it means. Single weights therefore do not add up to the whole.',
    all.withinWhole === null
      ? [`All findings of signs together have no number: ${stopped(all.limit?.words ?? all.words)}`]
      : [
          'All findings of signs together give ',
          { strong: all.words },
          `: about ${Math.abs(Math.round(all.withinWhole))} decibans, a likelihood ratio of ${ratioToOne(all.withinWhole)}.`,
        ],
    [
      { strong: 'A likelihood ratio is not the probability of either side. ' },
      `It says how probable the findings are if the piece is ${readingWords[leading].inSentence}, or if it is anything else that was considered, in the mix that was expected before anything was seen. How probable the piece itself is one or the other hangs also on what was to be expected before anything was seen, which lies outside the examination: see the appendix “The readings”.`,
    ],
    demonstratedWords(),
  ];
  return [
    { kind: 'heading', words: 'Taken together' },
    ...words.map((each): Block => ({ kind: 'paragraph', words: each })),
  ];
}

function scaleBlocks(): Block[] {
  return [
    {
      kind: 'table',
      caption: `${verbalScale.name}: the words used in this document`,
      columns: [
        { name: 'Words', share: 4 },
        { name: 'Likelihood ratio', share: 3 },
        { name: 'Decibans', share: 3 },
      ],
      groups: [
        {
          rows: verbalScale.bands.map((band) => [
            band.words,
            boundsInWords(band).ratio,
            boundsInWords(band).decibans,
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
