import { purposeNames } from '../../engagement/purposeNames.ts';
import { dayWords } from '../../units/days.ts';
import type { Block, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { isExamined, paragraphs } from '../wording.ts';
import { plateOf } from './plates.ts';

/** What stands under the title: whose, for whom, seen when and how; and what must be known before reading on. */
export function headBlocks(material: OpinionMaterial): Block[] {
  const rows = factsOf(material);
  const [first] = material.plates;
  return [
    first === undefined
      ? { kind: 'facts', rows }
      : { kind: 'front', rows, plate: plateOf(first.photo, first.plate, material) },
    ...noticesOf(material),
  ];
}

/** The head of a letter: without a plate, so that it stays on one page. */
export function letterHead(material: OpinionMaterial): Block[] {
  const left = new Set(['By', 'This document']);
  return [
    { kind: 'facts', rows: factsOf(material).filter(({ name }) => !left.has(name)) },
    ...noticesOf(material),
  ];
}

function factsOf({ piece, madeOn, issue }: OpinionMaterial) {
  const { engagement } = piece;
  const seen = [
    engagement.examinedOn === undefined ? '' : dayWords(engagement.examinedOn),
    engagement.examinedAt.trim(),
    isExamined(piece)
      ? piece.mode === 'in-hand'
        ? 'in the hand'
        : 'in photographs only'
      : 'not yet recorded',
  ];
  const rows: { name: string; words: Words[] }[] = [
    { name: 'For', words: [engagement.client.trim()] },
    {
      name: 'Intended use',
      words: [engagement.purpose === undefined ? '' : purposeNames[engagement.purpose]],
    },
    { name: 'Examined', words: [seen.filter((each) => each !== '').join('; ')] },
    { name: 'By', words: [engagement.examiner.trim(), engagement.examinerQualification.trim()] },
    {
      name: 'Effective',
      words: [engagement.effectiveOn === undefined ? '' : dayWords(engagement.effectiveOn)],
    },
    { name: 'This document', words: [`made ${dayWords(madeOn)}`, signed(issue)] },
  ];
  return rows
    .map(({ name, words }) => ({ name, words: words.filter((each) => each !== '') }))
    .filter(({ words }) => words.length > 0);
}

function signed(issue: OpinionMaterial['issue']): string {
  if (issue === undefined) return 'a draft, not signed';
  return `revision ${issue.revision}, signed by ${issue.by} on ${dayWords(issue.on)}`;
}

/** What a reader of an earlier revision must know first; and that a draft is one. */
function standingNotices({ piece, issue }: OpinionMaterial): Block[] {
  const { signedBy, signedOn, status } = piece.opinion;
  if (issue === undefined)
    return [
      notice(
        'Draft',
        status === 'signed'
          ? `Signed by ${signedBy.trim() || 'no name given'}${signedOn === undefined ? '' : ` on ${dayWords(signedOn)}`}, before revisions were kept. This print was made from the record as it stands now, and may differ from what was signed.`
          : 'This document is not signed. Nobody should act on it: it may change in every part.',
      ),
    ];
  if (issue.before === undefined) return [];
  const { before, revision } = issue;
  return [
    {
      kind: 'notice',
      tone: 'notice',
      title: `Revision ${revision}`,
      words: [
        `It takes the place of revision ${before.revision} of ${dayWords(before.on)}, which should no longer be relied on.`,
        ...[issue.isNew].flatMap((words) => labelled('What is new: ', words)),
        ...[issue.why].flatMap((words) => labelled('Why it was made: ', words)),
      ],
    },
  ];
}

function labelled(name: string, text: string): Words[] {
  const [first, ...rest] = paragraphs(text);
  return first === undefined ? [] : [[{ strong: name }, first], ...rest];
}

function notice(title: string, words: string): Block {
  return { kind: 'notice', tone: 'notice', title, words: [words] };
}

function noticesOf(material: OpinionMaterial): Block[] {
  const { piece } = material;
  return [
    ...(piece.example
      ? [
          notice(
            'An invented example',
            'The piece, the people, the houses and the places in this document do not exist. It shows what an opinion looks like and must not be used as evidence of anything.',
          ),
        ]
      : []),
    ...standingNotices(material),
    ...(piece.mode === 'photo-only'
      ? [
          notice(
            'From photographs only',
            'The piece was not in the examiner’s hands. Joints, undersides, tool marks and surfaces can’t be felt or lit in a photograph, so this opinion can’t be as sure as one on a piece examined in the hand, and should be confirmed by one before money or title hangs on it.',
          ),
        ]
      : []),
  ];
}
