import { makingWords, readingWords } from '../../piece/readings.ts';
import { formatYears } from '../../units/years.ts';
import { conditionsInWords, partsInWords } from '../../weighing/makingInWords.ts';
import { oddsInWords } from '../../weighing/oddsInWords.ts';
import { placeInWords } from '../../weighing/placeInWords.ts';
import { noneInWords, outOf, probabilityBand } from '../../weighing/probabilityWords.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs, stopped } from '../wording.ts';

/** The examiner's own conclusion and reasons; and beside it, never in its place, what the findings say. */
export function conclusionSection(material: OpinionMaterial): Section {
  const { opinion } = material.piece;
  const conclusion = paragraphs(opinion.conclusion);
  const reasons = paragraphs(opinion.reasons);
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
    ...(reasons.length === 0 ? [] : [{ kind: 'heading', words: 'Reasons' } satisfies Block]),
    ...reasons.map((words): Block => ({ kind: 'paragraph', words })),
    { kind: 'heading', words: 'Beside it: what the findings say when weighed' },
    ...besideIt(material),
  ];
  return { id: 'opinion', title: 'The opinion', blocks };
}

function factsOf({ piece }: OpinionMaterial): Block[] {
  const { opinion } = piece;
  const rows = [
    ...(opinion.reading === undefined
      ? []
      : [{ name: 'Concluded', words: [readingWords[opinion.reading].title] }]),
    ...(opinion.years === undefined ? [] : [{ name: 'Made', words: [formatYears(opinion.years)] }]),
    ...(opinion.place.trim() === '' ? [] : [{ name: 'Place', words: [opinion.place.trim()] }]),
  ];
  return rows.length === 0 ? [] : [{ kind: 'facts', rows }];
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
