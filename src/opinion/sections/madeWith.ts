import { settledInWords } from '../../learning/learnedKnowledge.ts';
import { dayWords } from '../../units/days.ts';
import { hashWords } from '../hashWords.ts';
import type { IssueHead } from '../issueHead.ts';
import type { Block, Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';

/** What is needed to make the same document again: versions, the seed of the redraws, the record's own id. */
export function madeWithSection({
  piece,
  weighing,
  knowledge,
  madeOn,
  version,
  issue,
}: OpinionMaterial): Section {
  const learned = settledInWords(weighing?.versions.knowledge ?? knowledge.version);
  const rows = [
    { name: 'Piece', words: [piece.id] },
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
      ...(learned === undefined ? [] : [{ kind: 'paragraph' as const, words: learned }]),
      {
        kind: 'paragraph',
        as: 'note',
        words:
          'From the same record, knowledge, program and seed the same document comes out again. The file is written as an accessible PDF (PDF/UA-1); it was not put through an independent validator.',
      },
      ...(issue === undefined ? [] : checkBlocks(issue)),
    ],
  };
}

/** What lets anyone find out whether this is the document that was signed, and from what; and what that can't show. */
function checkBlocks({ revision, recordId, count, head, contents }: IssueHead): Block[] {
  return [
    { kind: 'heading', words: 'How to check this document' },
    {
      kind: 'facts',
      rows: [
        { name: 'Revision', words: [String(revision)] },
        { name: 'Record', words: [recordId] },
        { name: 'Acts in the record', words: [String(count)] },
        { name: 'Head of the record', words: [hashWords(head)] },
        { name: 'Hash of what it rests on', words: [hashWords(contents)] },
      ],
    },
    {
      kind: 'list',
      items: [
        'The file: npx underside verify and the name of this file tells whether any byte of it was changed since it was signed. That by itself does not show who made it: only the examiner’s record can.',
        'Beside the examiner’s record, the same command tells whether this is the file that was signed, whether the record still holds the acts it was made from, unchanged (the head above is a digest over all of them), and whether the findings, photographs, weighing and knowledge kept with it are those that the hash above was taken of.',
        'On paper: the head and the hash printed here can be compared with those that the command prints of the file the examiner kept.',
      ],
    },
  ];
}
