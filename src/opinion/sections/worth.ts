import { runCalculation } from '../../calculations/runCalculation.ts';
import { worthByReading } from '../../calculations/worthByReading.ts';
import { approachInSentence, lacksForWorth, statesWorth } from '../../engagement/lacksForWorth.ts';
import { capital, listed } from '../../ground/words.ts';
import { readingWords } from '../../piece/readings.ts';
import { approachIds, type Worth } from '../../piece/worth.ts';
import { dayWords } from '../../units/days.ts';
import { formatDollars, formatMoney } from '../../units/money.ts';
import { outOf, probableWords, toldShares } from '../../weighing/probabilityWords.ts';
import { askedValues, valuesOf } from '../../worth/valuesOf.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs, stopped } from '../wording.ts';
import type { SalesFound } from './sales.ts';

/** What the piece is worth by the examiner’s figures: the value meant, the worth, what hangs on the doubt; nothing where none is stated. */
export function worthSection(material: OpinionMaterial, sales: SalesFound | undefined): Section | undefined {
  const { piece } = material;
  if (!statesWorth(piece)) return undefined;
  const { worth } = piece;
  const lacks = lacksForWorth(piece);
  return {
    id: 'worth',
    title: 'Worth',
    blocks: [
      { kind: 'paragraph', as: 'lead', words: worthLine(worth) },
      ...paragraphs(worth.conclusion).map((words): Block => ({ kind: 'paragraph', as: 'own', words })),
      ...factsOf(material),
      ...approachesOf(material, sales),
      ...byReading(material),
      ...(lacks.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              as: 'note',
              words: `Not stated: ${listed(lacks.map(({ words }) => words))}.`,
            } as const,
          ]),
      {
        kind: 'paragraph',
        as: 'note',
        words:
          'Prices, ranges, adjustments and weights are the examiner’s, in United States dollars; the program that set this document did the sums and knows no price.',
      },
    ],
  };
}

/** The worth concluded on, in a line. */
function worthLine({ lowCents, highCents }: Worth): string {
  if (lowCents === undefined) return 'No worth is concluded on.';
  return highCents === undefined || highCents === lowCents
    ? formatMoney(lowCents)
    : `${formatMoney(lowCents)} to ${formatMoney(highCents)}`;
}

function factsOf({ piece }: OpinionMaterial): Block[] {
  const { worth, engagement } = piece;
  const rows = [
    { name: 'The value', words: paragraphs(worth.definition) },
    { name: 'Defined in', words: [worth.definitionFrom.trim()] },
    { name: 'Market', words: paragraphs(worth.market) },
    { name: 'As of', words: [engagement.effectiveOn === undefined ? '' : dayWords(engagement.effectiveOn)] },
    { name: 'Assumed', words: paragraphs(worth.assumptions) },
  ]
    .map(({ name, words }) => ({ name, words: words.filter((each) => each !== '') }))
    .filter(({ words }) => words.length > 0);
  return rows.length === 0 ? [] : [{ kind: 'facts', rows }];
}

/** Which approaches were used and left out, and why; for the sales, what they say together. */
function approachesOf(material: OpinionMaterial, sales: SalesFound | undefined): Block[] {
  const { approaches } = material.piece.worth;
  const items = approachIds.flatMap((id): Words[] => {
    const approach = approaches[id];
    if (approach?.used === undefined) return [];
    const why = approach.why.trim();
    return [
      `${capital(approachInSentence[id])}: ${approach.used ? 'used' : 'left out'}.${why === '' ? '' : ` ${stopped(why)}`}`,
    ];
  });
  const together =
    sales === undefined
      ? []
      : [
          `The sales compared say ${formatDollars(sales.point)}${sales.low === null || sales.high === null ? '' : `, ${formatDollars(sales.low)} to ${formatDollars(sales.high)} by their own scatter (${outOf(toldShares.most)})`}; each stands with its adjustments in the appendix on sales.`,
        ];
  return items.length + together.length === 0
    ? []
    : [
        { kind: 'heading', words: 'Approaches' },
        { kind: 'list', items: [...items, ...together] },
      ];
}

/** What each reading would be worth, and how much of the worth hangs on which of them is true. */
function byReading({ piece, weighing, knowledge, madeOn }: OpinionMaterial): Block[] {
  if (weighing === undefined) return [];
  const readings = valuesOf(weighing.readings, piece.worth);
  const set = readings.filter(({ range }) => range !== undefined);
  if (set.length === 0) return [];
  const asked = askedValues(readings);
  const found =
    asked === undefined
      ? undefined
      : runCalculation(worthByReading, asked, { knowledge, yearNow: Number(madeOn.slice(0, 4)) });
  return [
    {
      kind: 'table',
      caption: 'What each reading would be worth, were it certain',
      columns: [
        { name: 'Reading', share: 4 },
        { name: 'By the findings', share: 3 },
        { name: 'Worth', share: 3 },
        { name: 'Why', share: 4 },
      ],
      groups: [
        {
          rows: set.map(({ id, probability, range }): Words[] => [
            readingWords[id].title,
            probableWords(probability),
            range === undefined ? '' : `${formatDollars(range[0])} to ${formatDollars(range[1])}`,
            piece.worth.byReading[id]?.words.trim() ?? '',
          ]),
        },
      ],
    },
    {
      kind: 'paragraph',
      words: found?.ok
        ? doubtWords(found.output)
        : 'Not every reading that counts has a range, so that no average over them is told.',
    },
  ];
}

type Found = {
  expected: number;
  low: number;
  high: number;
  atStake: number;
  settled: { lessAtStake: number };
};

function doubtWords({ expected, low, high, atStake, settled }: Found): string {
  const over = `Over all readings the worth is ${formatDollars(expected)} on average, ${formatDollars(low)} to ${formatDollars(high)} (${outOf(toldShares.most)}).`;
  if (atStake < 0.5) return `${over} Nothing of it hangs on the doubt.`;
  return `${over} ${formatDollars(atStake)} hangs on the doubt: so far, on average, the worth lies from that once the answer is known. A further examination can take away ${formatDollars(settled.lessAtStake)} of it at most. The average is a sum for deciding and not a price.`;
}
