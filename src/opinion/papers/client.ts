import { statesWorth } from '../../engagement/lacksForWorth.ts';
import { capital, counted, listed } from '../../ground/words.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { readingWords } from '../../piece/readings.ts';
import { formatMoney } from '../../units/money.ts';
import { formatYears } from '../../units/years.ts';
import { outOf } from '../../weighing/probabilityWords.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { plateOf } from '../sections/plates.ts';
import { paragraphs } from '../wording.ts';

/** What the owner wants to know, in plain words: what it is, how sure, why, what it is worth, how to treat it, what to do next. */
export function clientSections(material: OpinionMaterial): Section[] {
  return [
    what(material),
    sure(material),
    why(material),
    later(material),
    ...worth(material),
    care(material),
    next(material),
  ];
}

function section(id: string, title: string, blocks: readonly Block[]): Section {
  return { id, title, blocks };
}

const said = (words: Words): Block => ({ kind: 'paragraph', words });

function what({ piece, form }: OpinionMaterial): Section {
  const { opinion, engagement } = piece;
  const question = paragraphs(engagement.question);
  const made = [
    opinion.years === undefined ? '' : `It was made ${formatYears(opinion.years)}`,
    opinion.place.trim() === ''
      ? ''
      : `${opinion.years === undefined ? 'It comes' : 'and comes'} from ${opinion.place.trim()}`,
  ].filter((each) => each !== '');
  return section('what', 'What it is', [
    ...(question.length === 0 ? [] : [said([{ em: 'You asked: ' }, question.join(' ')])]),
    ...(paragraphs(opinion.conclusion).length === 0
      ? [said('No conclusion has been written yet.')]
      : paragraphs(opinion.conclusion).map((words): Block => ({ kind: 'paragraph', as: 'lead', words }))),
    ...(made.length === 0 ? [] : [said(`${made.join(' ')}.`)]),
    ...(form === undefined ? [] : [said([{ strong: `${capital(form.name)}. ` }, form.what])]),
  ]);
}

/** The probability that the conclusion itself is right, by the findings; not that of the reading that leads. */
function sure({ piece, weighing }: OpinionMaterial): Section {
  const concluded = piece.opinion.reading;
  if (weighing === undefined || concluded === undefined)
    return section('sure', 'How sure that is', [
      said('This has not been worked out: it rests on the reasons below.'),
    ]);
  const probability = weighing.readings.find(({ id }) => id === concluded)?.probability ?? 0;
  const rivals = weighing.readings.filter((each) => each.id !== concluded && each.probability >= 0.05);
  return section('sure', 'How sure that is', [
    said(
      `Of pieces that show what this one shows, about ${outOf(probability)} would be ${readingWords[concluded].inSentence}. That is a judgment worked out from what was seen, and not a measurement.`,
    ),
    rivals.length === 0
      ? said('No other history comes near it.')
      : said(
          `What else it could be: ${listed(rivals.map(({ id, probability: p }) => `${readingWords[id].inSentence} (${outOf(p)})`))}.`,
        ),
  ]);
}

function why(material: OpinionMaterial): Section {
  const reasons = paragraphs(material.piece.opinion.reasons);
  const plates = material.plates.slice(0, 3).map(({ photo, plate }) => plateOf(photo, plate, material));
  return section('why', 'Why', [
    ...(reasons.length === 0 ? [said('No reasons have been written yet.')] : reasons.map(said)),
    ...plates.map((plate): Block => ({ kind: 'plate', plate })),
  ]);
}

function later({ weighing, partName, piece }: OpinionMaterial): Section {
  const parts = weighing?.parts ?? [];
  const of = (standing: (typeof parts)[number]['standing']) =>
    parts.filter((part) => part.standing === standing).map(({ name }) => name);
  const missing = Object.values(piece.parts)
    .filter((part) => part.missing)
    .map(({ id }) => partName(id));
  const damage = Object.values(piece.damages);
  const rows: [string, readonly string[]][] = [
    ['Later repairs or renewals', of('repair')],
    ['Added later to improve it', of('improve')],
    ['From another old piece', of('other-old')],
    ['Could not be told', of('unsure')],
    ['Not looked at', of('not-looked-at')],
    ['Missing', missing],
  ];
  const shown = rows.filter(([, names]) => names.length > 0);
  return section('later', 'What is old on it, and what is not', [
    said(
      shown.length === 0
        ? 'Nothing on it was found to be later, and nothing is missing.'
        : 'Old furniture has nearly always been mended. What was found of it:',
    ),
    ...(shown.length === 0
      ? []
      : [
          {
            kind: 'facts',
            rows: shown.map(([name, names]) => ({ name, words: [listed(names)] })),
          } satisfies Block,
        ]),
    ...(damage.length === 0
      ? []
      : [
          said(
            `${capital(counted(damage.length, 'damage', 'damages'))} ${damage.length === 1 ? 'is' : 'are'} listed in the condition report.`,
          ),
        ]),
  ]);
}

function worth({ piece }: OpinionMaterial): Section[] {
  if (!statesWorth(piece)) return [];
  const { lowCents, highCents, definition, market } = piece.worth;
  const sum =
    lowCents === undefined
      ? 'No sum is concluded on yet.'
      : `${formatMoney(lowCents)}${highCents === undefined || highCents === lowCents ? '' : ` to ${formatMoney(highCents)}`}.`;
  return [
    section('worth', 'What it is worth', [
      { kind: 'paragraph', as: 'lead', words: sum },
      ...paragraphs(definition).map((words) => said([{ em: 'What is meant: ' }, words])),
      ...paragraphs(market).map((words) => said([{ em: 'Where: ' }, words])),
      said(
        'Another question, such as what a dealer would give or what an insurer would pay, has another answer.',
      ),
    ]),
  ];
}

function care({ form }: OpinionMaterial): Section {
  return section('care', 'How to treat it', [
    {
      kind: 'list',
      items: [
        'Dust it with a soft dry cloth. No spray, oil, solvent or “restorer”: what has darkened over two centuries is part of what it is, and does not come back.',
        'Keep it out of direct sun, away from radiators and hearths, where the air is neither very dry nor very damp and does not change fast.',
        'Do not have it stripped, sanded, refinished or made to look new. Ask a furniture conservator before anything is glued, filled or cleaned.',
        'Lift it by its frame, with a second person, and never drag it.',
        ...(form?.cautions ?? []),
      ],
    },
  ]);
}

function next({ piece, weighing, signName, partName }: OpinionMaterial): Section {
  const look = weighing?.nextLooks[0];
  return section('next', 'What to keep in mind', [
    {
      kind: 'list',
      items: [
        'Keep this page with the signed opinion, which goes before it: only that says what was found and binds who signed it.',
        ...(piece.mode === 'photo-only'
          ? ['The piece was seen in photographs only. Have it seen in the hand before money hangs on it.']
          : []),
        ...(look === undefined
          ? []
          : [
              `If more certainty is wanted, the next thing to look at is “${inSentence(signName(look.sign))}” on the ${partName(look.part)}.`.replace(
                'the the',
                'the',
              ),
            ]),
        'Write down what is known in the family about it, and keep every bill, letter and old photograph that shows it.',
      ],
    },
  ]);
}
