import type { Piece } from '../piece/piece.ts';
import { approachIds } from '../piece/worth.ts';

/** Whether anything of a worth was entered, so that the opinion has a section on it. */
export function statesWorth({ worth, comparables }: Pick<Piece, 'worth' | 'comparables'>): boolean {
  const { basis: _, approaches, byReading, ...fields } = worth;
  return (
    Object.keys(comparables).length + Object.keys(approaches).length + Object.keys(byReading).length > 0 ||
    Object.values(fields).some((each) => each !== undefined && each !== '')
  );
}

/** Something a stated worth lacks, and the page on which it is filled in. */
export type LacksForWorth = { id: string; words: string; page: 'engagement' | 'worth' };

/**
 * What a stated worth still lacks; nothing where no worth is stated.
 *
 * @source what an appraisal report has to state: USPAP Standards 7 and 8, from memory
 */
export function lacksForWorth(piece: Pick<Piece, 'worth' | 'comparables' | 'engagement'>): LacksForWorth[] {
  if (!statesWorth(piece)) return [];
  const { worth, engagement } = piece;
  const blank = (words: string) => words.trim() === '';
  const on = (page: LacksForWorth['page']) => (id: string, isLacking: boolean, words: string) =>
    isLacking ? [{ id, words, page }] : [];
  const [engaged, stated] = [on('engagement'), on('worth')];
  return [
    ...engaged('purpose', engagement.purpose === undefined, 'the intended use'),
    ...engaged('effectiveOn', engagement.effectiveOn === undefined, 'the effective date'),
    ...engaged('mayRely', blank(engagement.mayRely), 'the intended users'),
    ...engaged('interest', blank(engagement.interest), 'the examiner’s own interest in the piece'),
    ...stated('definition', blank(worth.definition), 'the value that is meant'),
    ...stated('definitionFrom', blank(worth.definitionFrom), 'where its definition stands'),
    ...stated('market', blank(worth.market), 'the market, and why'),
    ...approachIds.flatMap((id) => {
      const { used, why = '' } = worth.approaches[id] ?? {};
      const approach = approachInSentence[id];
      return used === undefined
        ? stated(id, true, `whether the ${approach} was used`)
        : stated(id, blank(why), `why the ${approach} was ${used ? 'used' : 'left out'}`);
    }),
    ...stated('assumptions', blank(worth.assumptions), 'assumptions and conditions'),
    ...stated('lowCents', worth.lowCents === undefined, 'the worth itself'),
    ...stated('conclusion', blank(worth.conclusion), 'how it follows'),
  ];
}

/** The approaches as they stand in a sentence. */
export const approachInSentence = {
  sales: 'comparison of sales',
  cost: 'cost approach',
  income: 'income approach',
} as const;
