import type { Piece } from './piece.ts';
import { approachIds } from './worth.ts';

/** Whether anything of a worth was entered, so that the opinion has a section on it. */
export function statesWorth({ worth, comparables }: Pick<Piece, 'worth' | 'comparables'>): boolean {
  const { basis: _, approaches, byReading, ...fields } = worth;
  return (
    Object.keys(comparables).length + Object.keys(approaches).length + Object.keys(byReading).length > 0 ||
    Object.values(fields).some((each) => each !== undefined && each !== '')
  );
}

/**
 * What a stated worth still lacks; nothing where no worth is stated.
 *
 * @source what an appraisal report has to state: USPAP Standards 7 and 8, from memory
 */
export function lacksForWorth(piece: Pick<Piece, 'worth' | 'comparables' | 'engagement'>): string[] {
  if (!statesWorth(piece)) return [];
  const { worth, engagement } = piece;
  const blank = (words: string) => words.trim() === '';
  return [
    engagement.purpose === undefined ? 'the intended use (Engagement)' : '',
    engagement.effectiveOn === undefined ? 'the effective date (Engagement)' : '',
    blank(engagement.mayRely) ? 'the intended users (Engagement)' : '',
    blank(engagement.interest) ? 'your own interest in the piece (Engagement)' : '',
    blank(worth.definition) ? 'the value that is meant' : '',
    blank(worth.definitionFrom) ? 'where its definition stands' : '',
    blank(worth.market) ? 'the market, and why' : '',
    ...approachIds.map((id) => {
      const approach = worth.approaches[id];
      if (approach?.used === undefined) return `whether the ${approachInSentence[id]} was used`;
      return blank(approach.why)
        ? `why the ${approachInSentence[id]} was ${approach.used ? 'used' : 'left out'}`
        : '';
    }),
    blank(worth.assumptions) ? 'assumptions and conditions' : '',
    worth.lowCents === undefined ? 'the worth itself' : '',
    blank(worth.conclusion) ? 'how it follows' : '',
  ].filter((each) => each !== '');
}

/** The approaches as they stand in a sentence. */
export const approachInSentence = {
  sales: 'comparison of sales',
  cost: 'cost approach',
  income: 'income approach',
} as const;
