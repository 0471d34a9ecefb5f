import { capital } from '../../ground/words.ts';
import { basisWord } from '../../knowledge/basisWord.ts';
import type { Figure } from '../../knowledge/figureSchema.ts';
import { figureNumbers } from '../../knowledge/figuresOf.ts';
import { groundsInWords } from '../../knowledge/groundsInWords.ts';
import { judgesInWords } from '../../knowledge/judgesInWords.ts';
import type { Knowledge, Sign } from '../../knowledge/schema.ts';
import { spanWords } from '../../knowledge/spanWords.ts';
import { stateNames } from '../../knowledge/stateNames.ts';
import { expectedWords, pieceHistories } from '../../piece/observation.ts';
import { historyWords } from '../../piece/observationWords.ts';
import { lookedOverId } from '../../weighing/weighObservations.ts';
import { citeShort } from '../citeWork.ts';
import type { Block, Column, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { tellsOf } from '../tellsOf.ts';
import { shopName, stopped } from '../wording.ts';

/** Every figure behind the findings of this piece, with its range and on whose word it stands. */
export function figuresSection(material: OpinionMaterial): Section | undefined {
  const { piece, knowledge } = material;
  const ids = [...new Set(Object.values(piece.findings).map((finding) => finding.sign))];
  const signs = ids.flatMap((id) => (knowledge.signs[id] === undefined ? [] : [knowledge.signs[id]]));
  const ownTable = ownFigures(material);
  if (signs.length === 0 && ownTable.length === 0) return undefined;
  return {
    id: 'figures',
    title: 'The figures',
    appendix: true,
    apart: true,
    blocks: [
      {
        kind: 'paragraph',
        words:
          'Of 100 such parts (or pieces), how many would show the sign: the best figure, and the lowest and highest that can be believed. Where the last column is blank, the words under the sign’s name hold. Whoever disagrees can disagree with a number.',
      },
      ...judgesNote(signs, knowledge),
      ...signTable(signs, material),
      ...ownTable,
    ],
  };
}

function judgesNote(signs: readonly Sign[], { making }: Knowledge): Block[] {
  const isPooled = signs.some((sign) => Object.values(sign.shows).some(({ apart }) => apart !== undefined));
  return isPooled ? [{ kind: 'paragraph', as: 'note', words: judgesInWords(making) }] : [];
}

function signTable(signs: readonly Sign[], material: OpinionMaterial): Block[] {
  const { knowledge } = material;
  if (signs.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'The figures for each sign that was found or looked for',
      columns: figureColumns('If it is'),
      groups: signs
        .toSorted((a, b) => (a.name < b.name ? -1 : 1))
        .map((sign) => ({
          name: `${sign.name} – evidence of ${tellsOf(sign, knowledge)}`,
          ...basisNote(sign, knowledge),
          rows: [...rowsOf(sign, knowledge), ...habitRows(sign, material)],
        })),
    },
  ];
}

/** What the words stand for by which the examiner’s own observations were weighed, and the looking over, where they were. */
function ownFigures({ piece, weighing, knowledge }: OpinionMaterial): Block[] {
  const { making } = knowledge;
  const words = Object.keys(piece.observations).length === 0 ? [] : expectedWords;
  const isLookedOver = weighing?.observations.some(({ id }) => id === lookedOverId) ?? false;
  const histories = isLookedOver ? pieceHistories : [];
  const groups = [
    {
      name: 'The words by which the examiner says how far an observation is to be expected',
      rows: words.map((word) => figureRow(capital(word), making.expected[word], making, knowledge)),
    },
    {
      name: 'Of 100 such pieces looked over for mends, later parts and changes, in how many none is found',
      rows: histories.map((each) =>
        figureRow(historyWords[each].title, making.lookedOver[each], making, knowledge),
      ),
    },
  ].filter(({ rows }) => rows.length > 0);
  if (groups.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'The figures for what is the examiner’s own',
      columns: figureColumns('If it is'),
      groups,
    },
  ];
}

function figureColumns(name: string): Column[] {
  return [
    { name, share: 4 },
    { name: 'Best', share: 0.9, end: true },
    { name: 'Low – high', share: 1.4, end: true },
    { name: 'Basis', share: 4.4 },
  ];
}

function rowsOf(sign: Sign, knowledge: Knowledge): Words[][] {
  const { span } = sign;
  const inUse = span === undefined ? [] : [[capital(spanWords(span)), '', '', wordOf(span, sign, knowledge)]];
  return [
    ...inUse,
    ...Object.entries(sign.shows).map(([state, figure]) =>
      figureRow(stateNames[state] ?? state, figure, sign, knowledge),
    ),
  ];
}

/** The habits of shops that go before the general figure, where the shop may have made this piece. */
function habitRows(sign: Sign, { weighing, knowledge }: OpinionMaterial): Words[][] {
  return (weighing?.shops ?? [])
    .filter((each) => each.probability >= 0.01)
    .flatMap((each) => {
      const shop = knowledge.shops[each.id];
      const habit = shop?.habits.find((one) => one.sign === sign.id);
      if (shop === undefined || habit === undefined) return [];
      const name = `Period work of ${shopName(shop)}`;
      return [figureRow(name, ownWord(habit.shows, shop), shop, knowledge)];
    });
}

/** A habit's figure with the shop's basis where it has no word of its own: no note stands over it here. */
function ownWord(figure: Figure, { basis }: Pick<Sign, 'basis'>): Figure {
  return figure.source === undefined && figure.by === undefined && basis !== undefined
    ? { ...figure, source: basis.source, at: basis.at, by: basis.by, why: basis.why }
    : figure;
}

function figureRow(name: string, figure: Figure, entry: Pick<Sign, 'basis'>, knowledge: Knowledge): Words[] {
  const { best, low, high } = figureNumbers(figure);
  return [name, `${best}`, `${low} – ${high}`, wordOf(figure, entry, knowledge)];
}

type Sourced = Pick<Figure, 'counts' | 'judged' | 'apart' | 'aside' | 'settled'> & {
  source?: string | undefined;
  at?: string | undefined;
  by?: string | undefined;
  why?: string | undefined;
};

/** A figure's own word; where it has none, the basis of its entry holds and is printed over its rows. */
function wordOf(figure: Sourced, { basis }: Pick<Sign, 'basis'>, { sources }: Knowledge): string {
  return capital(said(figure, sources)) || (basis === undefined ? 'No source given' : '');
}

function basisNote({ basis }: Sign, { sources }: Knowledge): { note?: string } {
  return basis === undefined ? {} : { note: capital(stopped(said(basis, sources))) };
}

function said(word: Sourced, sources: Knowledge['sources']): string {
  const { source, at, by, why } = word;
  // The reader of an opinion needs to know that it was not looked up, not how whoever wrote it down came by it.
  return [
    groundsInWords(word),
    source === undefined ? '' : citeShort(source, sources),
    at ?? '',
    basisWord(by),
    why ?? '',
  ]
    .filter((each) => each !== '')
    .join('; ')
    .replaceAll('from memory', 'not checked against a text');
}
