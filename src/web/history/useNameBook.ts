import { useMemo } from 'react';
import { idWords } from '../../knowledge/idWords.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import type { Piece } from '../../piece/piece.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import type { NameBook } from './nameBook.ts';

/** Names of this piece's parts, measures and photos, and of the signs, to stand in the middle of a sentence. */
export function useNameBook(piece: Pick<Piece, 'form' | 'photos'>): NameBook {
  const { signs, forms } = useKnowledge();
  const { form, photos } = piece;
  return useMemo(() => {
    const plan = forms[form];
    const parts = new Map(plan?.parts.map((part) => [part.id, inSentence(part.name)]));
    const measures = new Map(plan?.measures.map((measure) => [measure.id, inSentence(measure.name)]));
    return {
      sign: (id) => signs[id]?.name ?? id,
      part: (id) => parts.get(id) ?? idWords(id),
      measure: (id) => measures.get(id) ?? idWords(id),
      photo: (id) => {
        const called = photos[id]?.caption || photos[id]?.name;
        return called ? `“${called}”` : 'that was withdrawn';
      },
    };
  }, [signs, forms, form, photos]);
}
