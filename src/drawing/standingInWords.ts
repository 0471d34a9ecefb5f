import { type Standing, standings, standingWords } from './hatching.ts';

/**
 * A drawing's standings for who can't see it: `of the making: crest rail, splat; not looked at: left stile`.
 *
 * @param parts  ids of the parts to tell of; those without a standing are left out
 * @returns nothing where no part has a standing
 */
export function standingInWords(
  parts: readonly string[],
  names: Readonly<Record<string, string>>,
  standing: Readonly<Record<string, Standing>>,
): string {
  const told = [...new Set(parts)];
  return standings
    .map((each) => ({ each, of: told.filter((part) => standing[part] === each) }))
    .filter(({ of }) => of.length > 0)
    .map(({ each, of }) => `${standingWords[each]}: ${of.map((part) => names[part] ?? part).join(', ')}`)
    .join('; ');
}
