import { capital, listed } from '../../ground/words.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { stateNames } from '../../knowledge/stateNames.ts';
import { makingWords, readingWords } from '../../piece/readings.ts';
import {
  conditionTitle,
  notConsideredWords,
  partsInWords,
  whyNotConsidered,
} from '../../weighing/makingInWords.ts';
import {
  outOf,
  probabilityBand,
  probabilityScaleWords,
  toldShares,
} from '../../weighing/probabilityWords.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { shopName } from '../wording.ts';
import { shopsInWords } from './shopsInWords.ts';

/** How probable each history is from the odds the examiner started with, and how that moves with other odds. */
export function readingsSection(material: OpinionMaterial): Section | undefined {
  const { weighing } = material;
  if (weighing === undefined) return undefined;
  const { draws } = weighing.versions;
  const rows = weighing.readings.map((reading) => rowOf(readingWords[reading.id].title, reading, draws));
  const answers = weighing.making.answers.map((answer) => rowOf(makingWords[answer.id].title, answer, draws));
  const columns = (name: string) => [
    { name, share: 4.6 },
    { name: 'In words', share: 2.2 },
    { name: 'Probability', share: 1.8, end: true },
    { name: 'When the ranges are tested', share: 2.8, end: true },
  ];
  return {
    id: 'readings',
    title: 'The readings',
    appendix: true,
    blocks: [
      { kind: 'paragraph', words: oddsWords(material) },
      {
        kind: 'table',
        caption: 'First, how it came to be, from those odds and these findings',
        columns: columns('It is'),
        groups: [{ rows: answers }],
      },
      {
        kind: 'table',
        caption: 'Second, its condition, if it is of the period',
        columns: [
          { name: 'Condition', share: 6.4 },
          { name: 'In words', share: 2.6 },
          { name: 'Probability', share: 2.4, end: true },
        ],
        groups: [
          {
            rows: weighing.condition.ifOfThePeriod
              .toSorted((a, b) => b.share - a.share)
              .map(({ id, share }) => [conditionTitle(id), probabilityBand(share).words, outOf(share)]),
          },
        ],
      },
      { kind: 'paragraph', words: partsInWords(weighing) },
      {
        kind: 'table',
        caption: 'Both together: the seven readings, from those odds and these findings',
        columns: columns('Reading'),
        groups: [{ rows }],
      },
      ...(weighing.readings.some(({ considered }) => considered === false)
        ? [{ kind: 'paragraph', as: 'note', words: whyNotConsidered } satisfies Block]
        : []),
      {
        kind: 'paragraph',
        as: 'note',
        words: `No reading is printed above 999 or below 1 in 1000: judged figures can’t carry more. The words: ${probabilityScaleWords()}. ${draws === 0 ? '' : `Every figure was redrawn ${draws} times within its range; the range holds ${outOf(toldShares.most)} trials.`}`,
      },
      ...oddsTable(material),
      ...doneToIt(material),
      ...sensitive(material),
    ],
  };
}

type Answer = Weighing['readings'][number] | Weighing['making']['answers'][number];

function rowOf(name: string, { probability, low, high, considered }: Answer, draws: number): Words[] {
  if (considered === false) return [name, notConsideredWords, '–', '–'];
  return [
    name,
    probabilityBand(probability).words,
    outOf(probability),
    draws === 0 ? '–' : rangeWords(low, high),
  ];
}

function rangeWords(low: number, high: number): string {
  return outOf(low) === outOf(high) ? outOf(low) : `${outOf(low)} – ${outOf(high)}`;
}

function oddsWords({ piece, knowledge }: OpinionMaterial): string {
  const { startingOdds, defaultOdds } = knowledge.making;
  const id = piece.startingOdds ?? defaultOdds;
  const odds = startingOdds[id] ?? startingOdds[defaultOdds];
  if (odds === undefined) return 'The starting odds are not known to the knowledge files.';
  const chosen =
    piece.startingOdds === undefined
      ? 'The examiner left the starting odds as they are'
      : 'The starting odds are the examiner’s choice and no result of the examination';
  return `${chosen}: “${odds.name}”. Of 100 pieces that look like this one, ${odds.period} are taken to be of the period, ${odds['bench-copy']} later copies by hand, ${odds['machine-copy']} later copies by machine and ${odds['to-deceive']} made or altered to pass as older. ${odds.why}`;
}

function oddsTable({ weighing, knowledge, piece }: OpinionMaterial): Block[] {
  const lines = weighing?.byStartingOdds ?? [];
  if (weighing === undefined || lines.length < 2) return [];
  const used = piece.startingOdds ?? knowledge.making.defaultOdds;
  const usedWords = piece.startingOdds === undefined ? ' (left as they are)' : ' (chosen)';
  return [
    {
      kind: 'table',
      caption: 'The same findings from other starting odds',
      columns: [
        { name: 'Starting odds', share: 3 },
        { name: 'Then leads', share: 5 },
        { name: 'At', share: 2, end: true },
      ],
      groups: [
        {
          rows: lines.map((line): Words[] => [
            `${knowledge.making.startingOdds[line.odds]?.name ?? line.odds}${line.odds === used ? usedWords : ''}`,
            readingWords[line.leading].title,
            outOf(line.probabilities[line.leading] ?? 0),
          ]),
        },
      ],
    },
  ];
}

function doneToIt({ weighing, knowledge }: OpinionMaterial): Block[] {
  const likely = (list: readonly { id: string; name: string; probability: number }[]) =>
    list.filter((each) => each.probability >= 0.1).toSorted((a, b) => b.probability - a.probability);
  const alterations = likely(weighing?.alterations ?? []);
  const shops = likely(weighing?.shops ?? []).filter((each) => knowledge.shops[each.id] !== undefined);
  const rows = [
    ...alterations.map((each) => ({
      name: capital(each.name),
      words: [`${capital(probabilityBand(each.probability).words)}, ${outOf(each.probability)}`],
    })),
    ...shops.map((each) => ({
      name: `Work of ${shopName(knowledge.shops[each.id] ?? each)}`,
      words: [`${capital(probabilityBand(each.probability).words)}, ${outOf(each.probability)}`],
    })),
  ];
  const told = shopsInWords(
    shops.map(({ id }) => id),
    knowledge,
  );
  return rows.length === 0
    ? []
    : [
        { kind: 'heading', words: 'What was done to it, and whose work it may be' },
        { kind: 'facts', rows },
        ...(told.length === 0 ? [] : [{ kind: 'list', items: told } satisfies Block]),
      ];
}

function sensitive({ weighing, signName, partName }: OpinionMaterial): Block[] {
  if (weighing === undefined) return [];
  const changes = weighing.wouldChange
    .slice(0, 4)
    .map(
      (each) =>
        `If ${listed(
          each.findings.map((one) => `“${signName(one.sign)}”, ${partName(one.part)}, had ${one.otherwise}`),
        )}, the reading would be: ${readingWords[each.to].inSentence}.`,
    );
  const figures = weighing.sensitivity
    .filter((each) => each.high - each.low >= 0.01)
    .slice(0, 4)
    .map(
      (each) =>
        `${figureWords(each.figure)}: over its range the leading reading moves from ${outOf(each.low)} to ${outOf(each.high)}.`,
    );
  return [
    ...(changes.length + weighing.sensitivity.length === 0
      ? []
      : [{ kind: 'heading', words: 'What would change the reading' } satisfies Block]),
    ...(changes.length === 0 ? [] : [{ kind: 'list', items: changes } satisfies Block]),
    ...(figures.length === 0
      ? []
      : [
          { kind: 'paragraph', words: 'The figures it hangs on most:' } satisfies Block,
          { kind: 'list', items: figures } satisfies Block,
        ]),
    ...(figures.length === 0 && weighing.sensitivity.length > 0
      ? [
          {
            kind: 'paragraph',
            words:
              'No single figure, moved over its whole range, moves the leading reading by as much as 1 in 100.',
          } satisfies Block,
        ]
      : []),
  ];
}

/** `Stock number: later copy by hand`: the figure's sign and the state it is given for. */
function figureWords(figure: string): string {
  const at = figure.lastIndexOf(': ');
  const state = at < 0 ? undefined : stateNames[figure.slice(at + 2)];
  return state === undefined ? figure : `${figure.slice(0, at)}, ${inSentence(state)}`;
}
