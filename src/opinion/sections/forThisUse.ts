import { askedOf } from '../../engagement/askedByUse.ts';
import { purposeNames } from '../../engagement/purposeNames.ts';
import { listed } from '../../ground/words.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { dayWords } from '../../units/days.ts';
import type { Block, Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs } from '../wording.ts';

/** What the intended use asks to be stated, as the examiner answered it; nothing where it asks for nothing. Declarations stand above the signature. */
export function forThisUseSection({ piece }: OpinionMaterial): Section | undefined {
  const { purpose, answers } = piece.engagement;
  const asked = askedOf(piece).filter(({ declares }) => declares !== true);
  if (asked.length === 0) return undefined;
  const rows = asked.map(({ id, asks }) => ({
    name: asks,
    words: paragraphs(answers[id] ?? '').map(dayWords),
  }));
  const blank = rows.filter(({ words }) => words.length === 0).map(({ name }) => inSentence(name));
  const answered = rows.filter(({ words }) => words.length > 0);
  return {
    id: 'for-this-use',
    title:
      purpose === undefined
        ? 'What the worth asks for'
        : `For this use: ${inSentence(purposeNames[purpose])}`,
    blocks: [
      ...(answered.length === 0 ? [] : [{ kind: 'facts', rows: answered } satisfies Block]),
      ...(blank.length === 0
        ? []
        : [{ kind: 'paragraph', as: 'note', words: `Not stated: ${listed(blank)}.` } satisfies Block]),
    ],
  };
}
