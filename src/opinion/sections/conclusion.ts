import { findingKey } from '../../piece/finding.ts';
import { makingWords, readingWords } from '../../piece/readings.ts';
import { dayWords } from '../../units/days.ts';
import { formatYears } from '../../units/years.ts';
import { conditionsInWords, partsInWords } from '../../weighing/makingInWords.ts';
import { oddsInWords } from '../../weighing/oddsInWords.ts';
import { placeInWords } from '../../weighing/placeInWords.ts';
import { noneInWords, outOf, probabilityBand } from '../../weighing/probabilityWords.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import type { Block, Plate, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs, stopped } from '../wording.ts';
import { plateOf } from './plates.ts';

/** What the examiner concludes, how sure it is, who may rely on it and who stands for it: what is read if nothing else is. */
export function conclusionSection(material: OpinionMaterial): Section {
  const conclusion = paragraphs(material.piece.opinion.conclusion);
  const blocks: Block[] = [
    ...(conclusion.length === 0
      ? [
          {
            kind: 'paragraph',
            as: 'note',
            words: 'The examiner has not written a conclusion yet.',
          } satisfies Block,
        ]
      : conclusion.map((words): Block => ({ kind: 'paragraph', as: 'lead', words }))),
    ...factsOf(material),
  ];
  return { id: 'opinion', title: 'The opinion', blocks };
}

/** The examiner's own reasons; and beside them, never in their place, what the findings say. */
export function reasonsSection(material: OpinionMaterial): Section {
  const reasons = paragraphs(material.piece.opinion.reasons);
  const plates = platesOfReasons(material);
  return {
    id: 'reasons',
    title: 'Reasons',
    blocks: [
      ...(reasons.length === 0
        ? [{ kind: 'paragraph', as: 'note', words: 'The examiner has written no reasons.' } satisfies Block]
        : reasons.map((words): Block => ({ kind: 'paragraph', words }))),
      ...(plates.length === 0 ? [] : [{ kind: 'strip', plates } satisfies Block]),
      { kind: 'heading', words: 'Beside them: what the findings say when weighed' },
      ...besideIt(material),
    ],
  };
}

function factsOf(material: OpinionMaterial): Block[] {
  const { piece, issue } = material;
  const { opinion, engagement } = piece;
  const users = paragraphs(engagement.mayRely);
  const rows = [
    ...(opinion.reading === undefined
      ? []
      : [{ name: 'Concluded', words: [readingWords[opinion.reading].title] }]),
    ...(opinion.years === undefined ? [] : [{ name: 'Made', words: [formatYears(opinion.years)] }]),
    ...(opinion.place.trim() === '' ? [] : [{ name: 'Place', words: [opinion.place.trim()] }]),
    { name: 'How sure', words: [sureWords(material)] },
    { name: 'Intended users', words: users.length === 0 ? ['not stated'] : users },
    {
      name: 'Signed',
      words: [issue === undefined ? 'not signed: a draft' : `${issue.by}, ${dayWords(issue.on)}`],
    },
  ];
  return [{ kind: 'facts', rows }];
}

/** How sure it is in a sentence or two, by the weighing; that the examiner departs from it, where they do. */
function sureWords({ piece, weighing }: OpinionMaterial): string {
  if (weighing === undefined) return 'Nothing was weighed: how sure it is rests on the reasons alone.';
  const { making, readings, leading, firm } = weighing;
  const made = making.answers.find(({ id }) => id === making.leading);
  const reading = readings.find(({ id }) => id === leading);
  if (made === undefined || reading === undefined) return '';
  const of = (name: string, probability: number, settled: boolean) =>
    `${name}: ${probabilityBand(probability).words}, ${outOf(probability)}, ${settled ? 'settled' : 'not settled'}.`;
  const departs =
    piece.opinion.reading !== undefined && piece.opinion.reading !== leading
      ? ' The examiner departs from it: see the reasons.'
      : '';
  const weighed = [
    of(makingWords[making.leading].title, made.probability, making.firm),
    of(readingWords[leading].title, reading.probability, firm),
  ];
  return `By the weighing of the findings. ${weighed.join(' ')}${departs}`;
}

/** The plates that show what the conclusion rests on: those with marks on the findings that weigh most, up to four. */
function platesOfReasons(material: OpinionMaterial): Plate[] {
  const { piece, plates, weighing } = material;
  const [front] = plates;
  const weights = new Map(
    (weighing?.weights ?? []).map(({ sign, part, withinWhole }) => [
      findingKey(sign, part ?? undefined),
      Math.abs(withinWhole ?? Number.POSITIVE_INFINITY),
    ]),
  );
  const most = ({ photo }: (typeof plates)[number]) =>
    Math.max(
      0,
      ...photo.marks.map(({ finding }) => (finding === undefined ? 0 : (weights.get(finding) ?? 0))),
      ...Object.values(piece.findings)
        .filter((finding) => finding.photos.includes(photo.id))
        .map((finding) => weights.get(finding.id) ?? 0),
    );
  return plates
    .filter((each) => each !== front)
    .toSorted((a, b) => most(b) - most(a))
    .slice(0, 4)
    .toSorted((a, b) => a.plate - b.plate)
    .map(({ photo, plate }) => plateOf(photo, plate, material));
}

function besideIt({ piece, weighing, knowledge }: OpinionMaterial): Block[] {
  if (weighing === undefined)
    return [{ kind: 'paragraph', words: 'No findings were weighed, so there is nothing to set beside it.' }];
  const { opinion } = piece;
  const said: Block[] = [
    { kind: 'paragraph', words: makingWordsOf(weighing, oddsInWords(piece, knowledge)) },
    { kind: 'paragraph', words: conditionWordsOf(weighing) },
    { kind: 'paragraph', words: readingWordsOf(weighing) },
    ...(weighing.place === undefined
      ? []
      : [{ kind: 'paragraph', words: placeInWords(weighing).join(' ') } satisfies Block]),
    ...(weighing.unexplained.unexplained
      ? [
          {
            kind: 'notice',
            tone: 'notice',
            title: noneInWords(weighing.unexplained.probability),
            words: [weighing.unexplained.reason],
          } satisfies Block,
        ]
      : []),
  ];
  if (opinion.reading === undefined) return said;
  if (opinion.reading === weighing.leading)
    return [
      ...said,
      { kind: 'paragraph', words: 'The examiner’s conclusion and the weighing lead to the same reading.' },
    ];
  const reason = paragraphs(opinion.departure);
  return [
    ...said,
    {
      kind: 'notice',
      tone: 'notice',
      title: 'The examiner departs from the weighing',
      words: [
        `The findings lead to ${readingWords[weighing.leading].inSentence}; the examiner concludes on ${readingWords[opinion.reading].inSentence}.`,
        ...(reason.length === 0
          ? ['No reason for it has been written.']
          : [[{ strong: 'The examiner’s reason: ' }, reason[0] ?? ''] as const, ...reason.slice(1)]),
      ],
    },
  ];
}

/** First: how it came to be. */
function makingWordsOf({ making }: Weighing, odds: string): Words {
  const leading = making.answers.find(({ id }) => id === making.leading);
  if (leading === undefined) return '';
  return [
    `How it came to be. From ${odds} and these findings: `,
    { strong: makingWords[making.leading].inSentence },
    `: ${probabilityBand(leading.probability).words}, ${outOf(leading.probability)}${intervalWords(making.firmness.draws, leading)}. `,
    making.firm ? 'That is settled. ' : 'That is not settled. ',
    stopped(making.firmness.why),
  ];
}

/** Second: the condition it is in, if it is of the period. */
function conditionWordsOf(weighing: Weighing): Words {
  return [
    'Its condition, if it is of the period: ',
    { strong: conditionsInWords(weighing) },
    `. ${partsInWords(weighing)}`,
  ];
}

/** Both together: the first of the seven readings. */
function readingWordsOf(weighing: Weighing): Words {
  const leading = weighing.readings.find((reading) => reading.id === weighing.leading);
  if (leading === undefined) return '';
  return [
    'Both together, the first of the seven readings: ',
    { strong: readingWords[leading.id].inSentence },
    `: ${probabilityBand(leading.probability).words}, ${outOf(leading.probability)}${intervalWords(weighing.firmness.draws, leading)}. `,
    weighing.firm ? 'The reading is settled. ' : 'The reading is not settled. ',
    stopped(weighing.firmness.why),
  ];
}

/** How the redraws of the figures spread, where there were any. */
function intervalWords(draws: number, { low, high }: { low: number; high: number }): string {
  if (draws === 0) return '';
  return outOf(low) === outOf(high)
    ? ` in ${draws} trials of the ranges`
    : `, from ${outOf(low)} to ${outOf(high)} when the ranges of the figures are tested`;
}
