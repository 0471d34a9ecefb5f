import type { PaperKind } from '../../engagement/papers.ts';
import type { Block, Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { conclusionSection } from '../sections/conclusion.ts';
import { forThisUseSection } from '../sections/forThisUse.ts';
import { madeWithSection } from '../sections/madeWith.ts';
import { salesFound } from '../sections/sales.ts';
import { signatureSection } from '../sections/signature.ts';
import { worthSection } from '../sections/worth.ts';
import { paragraphs } from '../wording.ts';
import { clientSections } from './client.ts';
import { conditionSections } from './conditionReport.ts';
import { lessonSections } from './lesson.ts';
import { objectIdSections } from './objectId.ts';

/** The sections of a paper shorter than the full report, in their order. */
export function sectionsOfPaper(paper: Exclude<PaperKind, 'full'>, material: OpinionMaterial): Section[] {
  switch (paper) {
    case 'letter':
      return letter(material);
    case 'restricted':
      return restricted(material);
    case 'condition':
      return conditionSections(material);
    case 'client':
      return clientSections(material);
    case 'object-id':
      return objectIdSections(material);
    case 'lesson':
      return lessonSections(material);
  }
}

/** One page while the examiner's own words are short: the headings are few, and nothing is said twice. */
function letter(material: OpinionMaterial): Section[] {
  const reasons = paragraphs(material.piece.opinion.reasons);
  const { blocks: signature } = signatureSection(material);
  return [
    shortConclusion(material),
    {
      id: 'reasons',
      title: 'Reasons and limits',
      blocks: [
        ...(reasons.length === 0
          ? [{ kind: 'paragraph', as: 'note', words: 'The examiner has written no reasons.' } satisfies Block]
          : reasons.map((words): Block => ({ kind: 'paragraph', words }))),
        ...paragraphs(material.piece.opinion.limits).map((words): Block => ({ kind: 'paragraph', words })),
        {
          kind: 'paragraph',
          as: 'note',
          words:
            'All limiting conditions, findings and sources stand in the full report, or are kept with the record.',
        },
        ...signature,
      ],
    },
  ];
}

/** The conclusion without what the head and the signature of a letter say. */
function shortConclusion(material: OpinionMaterial): Section {
  const section = conclusionSection(material);
  const blocks = section.blocks.map(
    (block): Block =>
      block.kind === 'facts' ? { ...block, rows: block.rows.filter(({ name }) => name !== 'Signed') } : block,
  );
  return { ...section, blocks };
}

function restricted(material: OpinionMaterial): Section[] {
  const sales = salesFound(material);
  return [
    {
      id: 'restricted',
      title: 'For whom',
      blocks: [
        {
          kind: 'notice',
          tone: 'notice',
          title: 'Restricted',
          words: [
            'For the client and the intended users named below, and for no one else. What was found and how it was weighed is kept with the record and not told here; without it the conclusion may not be understood.',
          ],
        },
      ],
    },
    conclusionSection(material),
    ...[worthSection(material, sales), forThisUseSection(material)].filter((each) => each !== undefined),
    ownLimits(material),
    signatureSection(material),
    { ...madeWithSection(material), appendix: false },
  ];
}

/** The limits in the examiner's own words; that there are none, where none were written. */
export function ownLimits({ piece }: OpinionMaterial): Section {
  const own = [...paragraphs(piece.opinion.limits), ...paragraphs(piece.engagement.limits)];
  return {
    id: 'limits',
    title: 'Limiting conditions',
    blocks: [
      ...own.map((words): Block => ({ kind: 'paragraph', words })),
      ...(own.length === 0
        ? [
            {
              kind: 'paragraph',
              as: 'note',
              words: 'The examiner has written no limiting conditions.',
            } satisfies Block,
          ]
        : []),
      {
        kind: 'paragraph',
        as: 'note',
        words:
          'The findings, their weights and their sources stand in the full report, or are kept with the record.',
      },
    ],
  };
}
