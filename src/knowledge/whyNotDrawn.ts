import type { Knowledge } from './schema.ts';

/**
 * Why a sign has no drawing, as a sentence.
 *
 * @returns undefined for a sign that is drawn, and for one of the user's own of which nothing is said
 */
export function whyNotDrawn(
  sign: string,
  { signsNotDrawn }: Pick<Knowledge, 'signsNotDrawn'>,
): string | undefined {
  return Object.values(signsNotDrawn ?? {}).find(({ signs }) => signs.includes(sign))?.because;
}
