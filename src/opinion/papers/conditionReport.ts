import { capital, counted, listed } from '../../ground/words.ts';
import type { Damage } from '../../piece/condition.ts';
import { damageOriginWords } from '../../piece/damageWords.ts';
import { dayWords } from '../../units/days.ts';
import { drawDamage } from '../drawDamage.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { plateOf } from '../sections/plates.ts';
import { signatureSection } from '../sections/signature.ts';
import { paragraphs, stopped } from '../wording.ts';

/** The condition report: the whole in words, the damage numbered on the drawing, each entry, what was mended, what was not seen, the plates. */
export function conditionSections(material: OpinionMaterial): Section[] {
  return [
    whole(material),
    damageSection(material),
    ...mended(material),
    notSeen(material),
    {
      ...signatureSection(material),
      blocks: [
        {
          kind: 'signature',
          statements: [
            'This report tells what was seen on the day named, in the light named. It advises no treatment: what may be done, and by whom, is for a furniture conservator to say. Condition changes with climate, use and carriage.',
          ],
          name: material.issue?.by ?? material.piece.engagement.examiner.trim(),
          day: material.issue?.on ?? '',
          draft: material.issue === undefined,
        },
      ],
    },
    ...platesOfDamage(material),
  ];
}

function whole({ piece }: OpinionMaterial): Section {
  const { condition, engagement } = piece;
  const own = paragraphs(condition.words);
  const rows = [
    {
      name: 'Complete',
      words: [condition.completeness === undefined ? '' : capital(condition.completeness)],
    },
    // One word for the whole is read differently by everyone: it never stands alone.
    {
      name: 'State',
      words: [
        condition.state === undefined || own.length === 0 ? '' : `${capital(condition.state)}, as told below`,
      ],
    },
    { name: 'To move and use', words: paragraphs(condition.stability) },
    { name: 'Seen on', words: [engagement.examinedOn === undefined ? '' : dayWords(engagement.examinedOn)] },
    { name: 'Seen at', words: [engagement.examinedAt.trim()] },
    { name: 'Light and tools', words: paragraphs(condition.light) },
    { name: 'Climate', words: paragraphs(condition.climate) },
  ].map(({ name, words }) => ({ name, words: words.filter((each) => each !== '') }));
  const blank = rows.filter(({ words }) => words.length === 0).map(({ name }) => name.toLowerCase());
  return {
    id: 'condition',
    title: 'The condition as a whole',
    blocks: [
      ...own.map((words): Block => ({ kind: 'paragraph', as: 'lead', words })),
      { kind: 'facts', rows: rows.filter(({ words }) => words.length > 0) },
      ...(blank.length === 0
        ? []
        : [{ kind: 'paragraph', as: 'note', words: `Not stated: ${listed(blank)}.` } satisfies Block]),
    ],
  };
}

function damageSection(material: OpinionMaterial): Section {
  const { piece, form } = material;
  const damages = Object.values(piece.damages);
  if (damages.length === 0)
    return {
      id: 'damage',
      title: 'Damage',
      blocks: [
        {
          kind: 'paragraph',
          words: 'No damage has been entered. That none was entered does not say that there is none.',
        },
      ],
    };
  const drawn = form === undefined ? [] : drawDamage(form, piece);
  return {
    id: 'damage',
    title: 'Damage',
    blocks: [
      ...(drawn.length === 0 ? [] : [{ kind: 'pictures', pictures: drawn } satisfies Block]),
      ...(drawn.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              as: 'note',
              words:
                'A number stands on the part that is damaged, not on the very place; the place is told in the table. Drawn by the form and the sizes taken: it is no picture of the piece.',
            } satisfies Block,
          ]),
      {
        kind: 'table',
        caption: `${capital(counted(damages.length, 'entry', 'entries'))}, numbered as on the drawing`,
        columns: [
          { name: 'No.', share: 0.7 },
          { name: 'Part', share: 2.4 },
          { name: 'Damage', share: 2.6 },
          { name: 'Where, how large', share: 3.6 },
          { name: 'Degree', share: 1.5 },
          { name: 'From', share: 2.4 },
          { name: 'Plates', share: 1.1 },
        ],
        groups: groupsOf(damages, material),
      },
      {
        kind: 'paragraph',
        as: 'note',
        words:
          'Degrees, from least to most: negligible, slight, minor, moderate, marked, major, extreme. The degree says how great a damage is, not how urgent.',
      },
    ],
  };
}

const kinds = [
  ['physical', 'To the body of the piece'],
  ['surface', 'To the surface'],
  ['potential', 'To be expected from how it is made'],
] as const;

function groupsOf(damages: readonly Damage[], { partName, plateNumber }: OpinionMaterial) {
  const numbered = damages.map((damage, index) => ({ damage, number: index + 1 }));
  return kinds.flatMap(([kind, name]) => {
    const rows = numbered
      .filter(({ damage }) => damage.kind === kind)
      .map(({ damage, number }): Words[] => [
        `${number}`,
        capital(partName(damage.part)),
        `${capital(damage.term.trim() || 'not described')}${damage.goesOn === 'yes' ? '; it goes on' : ''}`,
        [damage.where, damage.size, damage.words]
          .map((each) => each.trim())
          .filter((each) => each !== '')
          .map(stopped)
          .join(' ') || 'not stated',
        damage.degree ?? 'not stated',
        damageOriginWords[damage.origin],
        damage.photos.flatMap((id) => plateNumber(id) ?? []).join(', '),
      ]);
    return rows.length === 0 ? [] : [{ name, rows }];
  });
}

/** Parts that the weighing reads as not of the making: an inference, kept apart from what is seen. */
function mended({ weighing }: OpinionMaterial): Section[] {
  const later = (weighing?.parts ?? []).filter(
    ({ standing }) => standing === 'repair' || standing === 'improve' || standing === 'other-old',
  );
  if (later.length === 0) return [];
  return [
    {
      id: 'mended',
      title: 'Repairs and later parts, as the findings are read',
      blocks: [
        {
          kind: 'list',
          items: later.map(({ name, words }): Words => [{ strong: `${capital(name)}. ` }, words]),
        },
        {
          kind: 'paragraph',
          as: 'note',
          words: 'This is read from the findings and not seen as such; the opinion tells how.',
        },
      ],
    },
  ];
}

function notSeen({ piece, parts, partName }: OpinionMaterial): Section {
  const told = new Set([
    ...Object.values(piece.damages).map(({ part }) => part),
    ...Object.values(piece.findings).map(({ part }) => part),
  ]);
  const unseen = parts.filter(({ id }) => !told.has(id)).map(({ name }) => name);
  const missing = Object.values(piece.parts).filter((part) => part.missing);
  return {
    id: 'not-seen',
    title: 'What is missing, and what was not told of',
    blocks: [
      {
        kind: 'list',
        items: [
          missing.length === 0
            ? 'No part is recorded as missing.'
            : `Missing: ${listed(missing.map(({ id }) => partName(id)))}.`,
          ...(unseen.length === 0
            ? []
            : [`Nothing is recorded of the ${listed(unseen)}: neither damage nor that there is none.`]),
          ...paragraphs(piece.engagement.limits),
        ],
      },
    ],
  };
}

/** The plates that damage is shown on, with their marks; where none is named, all of them. */
function platesOfDamage(material: OpinionMaterial): Section[] {
  const named = new Set(Object.values(material.piece.damages).flatMap(({ photos }) => photos));
  const shown =
    named.size === 0 ? material.plates : material.plates.filter(({ photo }) => named.has(photo.id));
  if (shown.length === 0) return [];
  return [
    {
      id: 'plates',
      title: 'Plates',
      apart: true,
      blocks: shown.map(
        ({ photo, plate }): Block => ({ kind: 'plate', plate: plateOf(photo, plate, material) }),
      ),
    },
  ];
}
