import type { Shop } from '../knowledge/schema.ts';

/** True if the claimed place is the shop's. */
export function isClaimed({ placeWords }: Shop, place: string): boolean {
  const words = wordsOf(place);
  return placeWords.some((word) => words.includes(wordsOf(word)));
}

/** A text as whole words in small letters, a blank at each end, so that one can be looked for in another. */
function wordsOf(text: string): string {
  return ` ${text
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()} `;
}
