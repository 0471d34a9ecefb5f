import { dayWords } from '../../units/days.ts';
import type { Block, Words } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { isExamined, purposeWords } from '../wording.ts';

/** What stands under the title: whose, for whom, seen when and how; and what must be known before reading on. */
export function headBlocks(material: OpinionMaterial): Block[] {
  return [{ kind: 'facts', rows: factsOf(material) }, ...noticesOf(material)];
}

function factsOf({ piece, madeOn }: OpinionMaterial) {
  const { engagement, opinion } = piece;
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
    { name: 'Purpose', words: [engagement.purpose === undefined ? '' : purposeWords[engagement.purpose]] },
    { name: 'Examined', words: [seen.filter((each) => each !== '').join('; ')] },
    { name: 'By', words: [engagement.examiner.trim(), engagement.examinerQualification.trim()] },
    {
      name: 'Effective',
      words: [engagement.effectiveOn === undefined ? '' : dayWords(engagement.effectiveOn)],
    },
    { name: 'This document', words: [`made ${dayWords(madeOn)}`, signed(opinion)] },
  ];
  return rows
    .map(({ name, words }) => ({ name, words: words.filter((each) => each !== '') }))
    .filter(({ words }) => words.length > 0);
}

function signed(opinion: OpinionMaterial['piece']['opinion']): string {
  if (opinion.status !== 'signed') return 'a draft, not signed';
  const day = opinion.signedOn === undefined ? '' : ` on ${dayWords(opinion.signedOn)}`;
  return `signed by ${opinion.signedBy.trim() || 'no name given'}${day}`;
}

function noticesOf({ piece }: OpinionMaterial): Block[] {
  const notice = (title: string, words: string): Block => ({
    kind: 'notice',
    tone: 'notice',
    title,
    words: [words],
  });
  return [
    ...(piece.example
      ? [
          notice(
            'An invented example',
            'The piece, the people, the houses and the places in this document do not exist. It shows what an opinion looks like and must not be used as evidence of anything.',
          ),
        ]
      : []),
    ...(piece.opinion.status === 'signed'
      ? []
      : [
          notice(
            'Draft',
            'This document is not signed. Nobody should act on it: it may change in every part.',
          ),
        ]),
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
