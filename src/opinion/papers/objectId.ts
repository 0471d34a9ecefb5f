import { capital, listed } from '../../ground/words.ts';
import { idWords } from '../../knowledge/idWords.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { dayWords } from '../../units/days.ts';
import { formatInches, formatMm } from '../../units/length.ts';
import { formatYears } from '../../units/years.ts';
import type { Block, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { plateOf } from '../sections/plates.ts';
import { paragraphs, stopped } from '../wording.ts';

/** One category of Object ID: its name, and what the record holds of it; nothing where it is blank. */
export type ObjectIdCategory = { id: string; name: string; words: readonly Words[] };

/**
 * What the record holds under each category of Object ID, in the order of the checklist; those it recommends besides, after them.
 *
 * @source Object ID checklist (ICOM; Thornes, Dorrell and Lie, Introduction to Object ID, Getty 1999), its categories read
 */
export function objectIdCategories(material: OpinionMaterial): ObjectIdCategory[] {
  const { piece, form, parts, partName, signName, plates, madeOn } = material;
  const { opinion, claim, engagement } = piece;
  const woods = [...new Set(Object.values(piece.parts).flatMap((part) => part.woods))].map(idWords);
  const present = Object.values(piece.findings).filter(({ state }) => state === 'present');
  const marks = present.filter(({ sign }) => /mark|label|brand|number|stamp|inscription|chalk/.test(sign));
  const features = [
    ...Object.values(piece.damages).map(
      ({ term, part, where }) =>
        `${capital(term || 'damage')}, ${partName(part)}${where.trim() === '' ? '' : `, ${where.trim()}`}.`,
    ),
    ...Object.values(piece.observations).map(({ words, part }) => `${stopped(words)} (${partName(part)})`),
    ...present
      .filter((each) => !marks.includes(each) && each.words.trim() !== '')
      .map(({ words, part }) => `${capital(partName(part))}: ${stopped(words)}`),
  ];
  const chosen = (form?.features ?? []).flatMap((feature) => {
    const option = feature.options.find((each) => each.id === piece.features[feature.id]);
    return option === undefined ? [] : [`${inSentence(feature.name)}: ${inSentence(option.name)}`];
  });
  const years = opinion.years ?? claim.period;
  const sizes = Object.values(piece.measures).map(
    ({ id, mm }) =>
      `${capital(form?.measures.find((each) => each.id === id)?.name ?? idWords(id))}: ${formatInches(mm)} in (${formatMm(mm)})`,
  );
  const all: [string, string, readonly Words[]][] = [
    [
      'photographs',
      'Photographs',
      plates.length === 0
        ? []
        : [
            `${plates.length} with this sheet: ${listed(plates.map(({ photo, plate }) => `plate ${plate}${photo.caption.trim() === '' ? '' : ` (${photo.caption.trim()})`}`))}.`,
          ],
    ],
    [
      'type',
      'Type of object',
      form === undefined ? [] : [`Furniture; ${inSentence(form.family)}; ${inSentence(form.name)}.`],
    ],
    ['measurements', 'Measurements', sizes],
    [
      'materials',
      'Materials and techniques',
      [
        ...(woods.length === 0 ? [] : [`Wood: ${listed(woods)}.`]),
        ...(chosen.length === 0 ? [] : [`${capital(chosen.join('; '))}.`]),
      ],
    ],
    [
      'inscriptions',
      'Inscriptions and markings',
      marks.map(
        ({ sign, part, words }) =>
          `${signName(sign)}, ${partName(part)}${words.trim() === '' ? '.' : `: ${stopped(words)}`}`,
      ),
    ],
    [
      'date',
      'Date or period',
      years === undefined
        ? []
        : [`${opinion.years === undefined ? 'Said to be of ' : ''}${formatYears(years)}.`],
    ],
    ['maker', 'Maker', (claim.maker ?? '').trim() === '' ? [] : [`Said to be ${claim.maker?.trim()}.`]],
    ['subject', 'Subject', []],
    ['title', 'Title', piece.title.trim() === '' ? [] : [piece.title.trim()]],
    ['features', 'Distinguishing features', features],
    [
      'description',
      'Description',
      [
        ...paragraphs(opinion.conclusion),
        ...parts.flatMap(({ id, name }) =>
          paragraphs(piece.parts[id]?.words ?? '').map(
            (words): Words => [{ em: `${capital(name)}. ` }, words],
          ),
        ),
      ],
    ],
    ['inventory', 'Inventory number', [`Record ${piece.id}.`]],
    [
      'written',
      'Related written material',
      Object.values(piece.owners).flatMap(({ source }) => paragraphs(source)),
    ],
    [
      'origin',
      'Place of origin',
      (opinion.place.trim() || (claim.place ?? '').trim()) === ''
        ? []
        : [opinion.place.trim() === '' ? `Said to be ${claim.place?.trim()}.` : opinion.place.trim()],
    ],
    ['related', 'Related objects', paragraphs(engagement.background)],
    ['documented', 'Date documented', [dayWords(engagement.examinedOn ?? madeOn)]],
  ];
  return all.map(([id, name, words]) => ({ id, name, words }));
}

/** The Object ID checklist of a piece: each category, or that it is not recorded; then the plates. */
export function objectIdSections(material: OpinionMaterial): Section[] {
  const categories = objectIdCategories(material);
  return [
    {
      id: 'object-id',
      title: 'What identifies it',
      blocks: [
        {
          kind: 'facts',
          rows: categories.map(({ name, words }) => ({
            name,
            words: words.length === 0 ? [[{ em: 'not recorded' }]] : words,
          })),
        },
        {
          kind: 'paragraph',
          as: 'note',
          words:
            'By the categories of Object ID, the international standard for describing cultural objects. Keep this sheet and the pictures in another place than the piece. It names no owner, so that it can be handed to police, insurers and registers.',
        },
      ],
    },
    {
      id: 'plates',
      title: 'Photographs',
      apart: true,
      blocks:
        material.plates.length === 0
          ? [
              {
                kind: 'paragraph',
                words:
                  'None are recorded. Overall views, and close views of marks, damage and repairs with a scale beside them, are what is asked for first when a piece is missing.',
              },
            ]
          : material.plates.map(
              ({ photo, plate }): Block => ({ kind: 'plate', plate: plateOf(photo, plate, material) }),
            ),
    },
  ];
}
