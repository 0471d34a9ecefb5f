import { askedOf } from '../../engagement/askedByUse.ts';
import type { Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs, stopped } from '../wording.ts';

/** Who stands for it, or an empty line where nobody does yet. */
export function signatureSection({ piece, issue }: OpinionMaterial): Section {
  const { engagement } = piece;
  const draft = issue === undefined;
  const declared = askedOf(piece)
    .filter(({ declares }) => declares === true)
    .map(({ id, asks }) => {
      const words = paragraphs(engagement.answers[id] ?? '').join(' ');
      return `${asks}: ${words === '' ? 'not stated.' : stopped(words)}`;
    });
  return {
    id: 'signature',
    title: 'Declaration and signature',
    blocks: [
      {
        kind: 'signature',
        statements: [
          'The conclusion and its reasons are the examiner’s own. The program weighed the recorded findings by the figures of its knowledge files; it decided nothing. The opinion holds for the day named and for what was seen then: new evidence may change it.',
          engagement.interest.trim() === ''
            ? 'The examiner has stated nothing about an interest in the piece or the parties.'
            : `Interest of the examiner in the piece or the parties, as stated: ${engagement.interest.trim()}`,
          ...declared,
        ],
        name: draft ? engagement.examiner.trim() : issue.by,
        day: draft ? '' : issue.on,
        draft,
      },
    ],
  };
}
