/**
 * What was typed, in plain signs: vulgar fractions spelled out, primes and curly quotes made ' and ", full-width
 * signs narrowed, odd spaces and dashes made ordinary, all lower case.
 */
export function plainSigns(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (sign) => ` ${vulgarFractions[sign]} `)
    .replace(/[″“”„‟〃]/g, '"')
    .replace(/[′‘’‛`´]/g, "'")
    .normalize('NFKC')
    .replace(/\p{Cf}/gu, '')
    .replace(/[⁄∕]/g, '/')
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/''/g, '"')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replace(/\s*\/\s*/g, '/')
    .trim();
}

// biome-ignore format: a table
const vulgarFractions: Record<string, string> = {
  '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5',
  '⅙': '1/6', '⅚': '5/6', '⅐': '1/7', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅑': '1/9', '⅒': '1/10',
};
