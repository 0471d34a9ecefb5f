/** A number of a set as it was cut or written. */
export type ReadNumber = {
  text: string;
  value: number;
  /** What a cut numeral says when it is read from its other side: IV is VI. */
  turned?: number;
};

/**
 * The numbers that were found on seat frames and rails, as the trade writes them: `I, V, VIII`, `IIII`, `3 5 8`.
 *
 * Method: parted at commas, semicolons, blanks and line ends. A numeral of strokes is read as chisel numerals are cut: four
 * strokes (IIII, VIIII) as well as IV and IX, and plain strokes up to twelve.
 *
 * @returns the numbers in the order written, and the words that are none
 * @source common practice: chisel numerals stand by joints, and nothing says which way up they were cut
 */
export function readNumerals(text: string): { numbers: ReadNumber[]; unread: string[] } {
  const words = text
    .normalize('NFKC')
    .split(/[\s,;/&+]+/)
    .map((word) => word.replace(/^(?:no\.?|nos\.?|number|#|№)|[.:)]+$/gi, ''))
    .filter((word) => word !== '' && !/^(?:and|und|et)$/i.test(word));
  const numbers: ReadNumber[] = [];
  const unread: string[] = [];
  for (const word of words) {
    const value = /^\d{1,5}$/.test(word) ? Number(word) : readRoman(word);
    if (value === undefined || value < 1) {
      unread.push(word);
      continue;
    }
    const turned = /^\d/.test(word) ? undefined : readRoman([...word].reverse().join(''));
    numbers.push({
      text: word.toUpperCase(),
      value,
      ...(turned === undefined || turned === value ? {} : { turned }),
    });
  }
  return { numbers, unread };
}

const roman = /^(M{0,3})(CM|CD|D?C{0,4})(XC|XL|L?X{0,4})(IX|IV|V?I{0,4})$/;
const worth: Record<string, number> = { I: 1, V: 5, X: 10, L: 50, C: 100, D: 500, M: 1000 };

/** A Roman numeral, fours and nines written either way, or plain strokes; undefined where it is none. */
export function readRoman(word: string): number | undefined {
  const letters = word.toUpperCase();
  if (/^I{1,12}$/.test(letters)) return letters.length;
  if (letters === '' || !roman.test(letters)) return undefined;
  const values = [...letters].map((letter) => worth[letter] as number);
  return values.reduce((sum, value, at) => sum + (value < (values[at + 1] ?? 0) ? -value : value), 0);
}
