import { capital, counted } from '../../ground/words.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { findingKey } from '../../piece/finding.ts';
import { readingWords } from '../../piece/readings.ts';
import { formatYears } from '../../units/years.ts';
import { outOf } from '../../weighing/probabilityWords.ts';
import { weightWords } from '../../weighing/verbalScale.ts';
import type { Block, Plate, Section, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { plateOf } from '../sections/plates.ts';
import { paragraphs, stateWords, stopped } from '../wording.ts';

/** How many signs a lesson asks about: the weightiest, enough for an hour. */
const mostAsked = 10;

/**
 * A lesson from a case: the question, the plates with their marks unexplained, what to look at and where; then, apart, the answer.
 * What stands before the answer says nothing of what was found.
 */
export function lessonSections(material: OpinionMaterial): Section[] {
  return [question(material), ...plates(material), lookAt(material), answer(material)];
}

function question({ form, piece }: OpinionMaterial): Section {
  const { claim } = piece;
  return {
    id: 'question',
    title: 'The question',
    blocks: [
      {
        kind: 'paragraph',
        as: 'lead',
        words: `A ${inSentence(form?.name ?? 'piece of furniture')}${claim.period === undefined ? '' : `, said to be of ${formatYears(claim.period)}`}. How did it come to be as it stands: of the period, and how much of it; put together; a later copy; or made to pass as older?`,
      },
      ...(form === undefined ? [] : [{ kind: 'paragraph', words: form.what } satisfies Block]),
      {
        kind: 'list',
        items: [
          'Write your answer down before you turn the page, and how sure you are in a hundred.',
          'Say for each thing you see what you would expect of each answer: what fits only one of them counts most.',
          'Say what you would look at next, and what would change your mind.',
        ],
      },
    ],
  };
}

function plates(material: OpinionMaterial): Section[] {
  if (material.plates.length === 0) return [];
  const silent = material.plates.map(({ photo, plate }): Plate => {
    const shown = plateOf(photo, plate, material);
    return {
      ...shown,
      caption: photo.part === undefined ? 'The piece.' : `${capital(material.partName(photo.part))}.`,
      alternative: `Photograph of ${photo.part === undefined ? 'the piece' : material.partName(photo.part)}; what it shows is the question.`,
      origin: '',
      marks: shown.marks.map((mark) => ({ ...mark, says: 'What do you see here?' })),
    };
  });
  return [
    { id: 'plates', title: 'The plates', blocks: silent.map((plate): Block => ({ kind: 'plate', plate })) },
  ];
}

/** The signs asked about: the weightiest findings, in the order of the parts, so that their order gives nothing away. */
function asked({ piece, weighing, parts }: OpinionMaterial) {
  const weights = new Map(
    (weighing?.weights ?? []).map((each) => [findingKey(each.sign, each.part ?? undefined), each]),
  );
  const place = new Map(parts.map(({ id }, index) => [id, index]));
  return Object.values(piece.findings)
    .filter(({ state }) => state === 'present' || state === 'absent')
    .map((finding) => ({ finding, weight: weights.get(finding.id)?.alone ?? 0 }))
    .toSorted((a, b) => Math.abs(b.weight) - Math.abs(a.weight))
    .slice(0, mostAsked)
    .toSorted((a, b) => (place.get(a.finding.part ?? '') ?? -1) - (place.get(b.finding.part ?? '') ?? -1));
}

function lookAt(material: OpinionMaterial): Section {
  const { knowledge, partName, signName } = material;
  const signs = asked(material);
  return {
    id: 'look',
    title: 'What to look at',
    apart: true,
    blocks:
      signs.length === 0
        ? [{ kind: 'paragraph', words: 'No findings have been recorded: there is nothing to ask about yet.' }]
        : [
            {
              kind: 'table',
              caption: `${capital(counted(signs.length, 'sign'))}: is it there or not, and what does that say?`,
              columns: [
                { name: 'Where', share: 2 },
                { name: 'Sign', share: 3 },
                { name: 'How to look', share: 4.5 },
                { name: 'There? What does it say?', share: 3.5 },
              ],
              groups: [
                {
                  rows: signs.map(({ finding }): Words[] => [
                    capital(partName(finding.part)),
                    signName(finding.sign),
                    knowledge.signs[finding.sign]?.look ?? '',
                    '',
                  ]),
                },
              ],
            },
          ],
  };
}

function answer(material: OpinionMaterial): Section {
  const { piece, weighing, partName, signName, plates: shown } = material;
  const { opinion } = piece;
  const reading = opinion.reading ?? weighing?.leading;
  const probability = weighing?.readings.find(({ id }) => id === reading)?.probability;
  const seen = shown.flatMap(({ photo, plate }) =>
    plateOf(photo, plate, material).marks.map(
      ({ number, says }): Words => [{ strong: `Plate ${plate}, ${number}. ` }, says],
    ),
  );
  return {
    id: 'answer',
    title: 'The answer',
    apart: true,
    answer: true,
    blocks: [
      ...(reading === undefined
        ? [{ kind: 'paragraph', words: 'Nothing has been concluded yet.' } satisfies Block]
        : [
            {
              kind: 'paragraph',
              as: 'lead',
              words: `${readingWords[reading].title}${opinion.years === undefined ? '' : `, ${formatYears(opinion.years)}`}${probability === undefined ? '.' : `; by the findings ${outOf(probability)}.`}`,
            } satisfies Block,
          ]),
      ...paragraphs(opinion.conclusion).map((words): Block => ({ kind: 'paragraph', words })),
      ...paragraphs(opinion.reasons).map((words): Block => ({ kind: 'paragraph', as: 'own', words })),
      ...(seen.length === 0
        ? []
        : [
            { kind: 'heading', words: 'On the plates' } satisfies Block,
            { kind: 'list', items: seen } satisfies Block,
          ]),
      {
        kind: 'table',
        caption: 'What was found, and what each says by itself of what the findings together lead to',
        columns: [
          { name: 'Where', share: 2 },
          { name: 'Sign', share: 3 },
          { name: 'Found', share: 4 },
          { name: 'Says', share: 4 },
        ],
        groups: [
          {
            rows: asked(material).map(({ finding, weight }): Words[] => [
              capital(partName(finding.part)),
              signName(finding.sign),
              `${stateWords[finding.state]}. ${stopped(paragraphs(finding.words).join(' '))}`.trim(),
              capital(weightWords(weight, 'it', 'all else')),
            ]),
          },
        ],
      },
      ...paragraphs(piece.settled?.words ?? '').map(
        (words): Block => ({ kind: 'paragraph', words: [{ strong: 'How it turned out. ' }, words] }),
      ),
    ],
  };
}
