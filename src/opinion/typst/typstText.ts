import type { Run, Words } from '../opinionDocument.ts';

/**
 * A text as a Typst string literal. A string is never read as markup, so nothing that a person typed can become
 * a command: only the quote, the backslash and what can't be set in type are written otherwise.
 *
 * @param text  any string; lone surrogates, controls and non-characters are set as U+FFFD
 */
export function typstString(text: string): string {
  const plain = text.replace(spaces, ' ').replace(neverSet, '\u{FFFD}');
  return `"${plain.replace(/["\\]/g, '\\$&')}"`;
}

/** Words as Typst content: a row of strings, each set as it stands. */
export function typstWords(words: Words): string {
  const runs: readonly Run[] = typeof words === 'string' ? [words] : words;
  return `[${runs.map((run) => `#${runOf(run)};`).join('')}]`;
}

/** Items as a Typst array, however many there are. */
export function typstArray(items: readonly string[]): string {
  return `(${items.map((item) => `${item},`).join('')})`;
}

/** A length in millimetres as Typst writes it. */
export function typstMm(mm: number): string {
  return `${Math.round(mm * 1000) / 1000}mm`;
}

function runOf(run: Run): string {
  if (typeof run === 'string') return `text(${typstString(run)})`;
  if ('strong' in run) return `strong(${typstString(run.strong)})`;
  if ('em' in run) return `emph(${typstString(run.em)})`;
  return `weblink(${typstString(run.link)}, ${typstString(run.words)})`;
}

/** Controls, lone surrogates and the code points that are no characters: no font can set them. */
const neverSet = /[\p{Cc}\p{Cs}\p{Noncharacter_Code_Point}]/gu;

/** Line ends and tabs within a run: paragraphs are split before. */
const spaces = /[\t\n\r\u2028\u2029]+/gu;
