import { dayWords } from '../../units/days.ts';
import type { Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';

/** What is needed to make the same document again: versions, the seed of the redraws, the record's own id. */
export function madeWithSection({ piece, weighing, knowledge, madeOn, version }: OpinionMaterial): Section {
  const rows = [
    { name: 'Record', words: [piece.id] },
    { name: 'Document made on', words: [dayWords(madeOn)] },
    { name: 'Program', words: [`Underside ${version}`] },
    { name: 'Knowledge', words: [weighing?.versions.knowledge ?? knowledge.version] },
    ...(weighing === undefined
      ? []
      : [
          {
            name: 'Trials of the ranges',
            words: [
              weighing.versions.draws === 0
                ? 'none'
                : `${weighing.versions.draws}, from seed ${weighing.versions.seed}`,
            ],
          },
        ]),
  ];
  return {
    id: 'made-with',
    title: 'Made with',
    appendix: true,
    blocks: [
      { kind: 'facts', rows },
      {
        kind: 'paragraph',
        as: 'note',
        words:
          'From the same record, knowledge, program and seed the same document comes out again. The file is written as an accessible PDF (PDF/UA-1); it was not put through an independent validator.',
      },
    ],
  };
}
