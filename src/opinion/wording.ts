import type { FindingState, Sureness } from '../piece/finding.ts';
import { hasEvidence } from '../piece/hasEvidence.ts';
import type { Piece } from '../piece/piece.ts';

export const stateWords: Record<FindingState, string> = {
  present: 'Present',
  absent: 'Absent',
  'could-not-tell': 'Could not tell',
  'does-not-apply': 'Does not apply',
};

export const surenessWords: Record<Sureness, string> = {
  plain: 'plain',
  fairly: 'fairly sure',
  hint: 'a hint',
};

/** The paragraphs of what was typed; none for nothing but space. */
export function paragraphs(text: string): string[] {
  return text
    .split(/\r\n|[\n\r\u2028\u2029]/u)
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

/** A text that ends with a stop. */
export function stopped(text: string): string {
  const trimmed = text.trim();
  return trimmed === '' || /[.?!…:”"’)]$/u.test(trimmed) ? trimmed : `${trimmed}.`;
}

/** Whether anything says that the piece was looked at: a day, a finding or an observation. */
export function isExamined(
  piece: Pick<Piece, 'engagement' | 'findings' | 'observations' | 'lookedOver'>,
): boolean {
  return piece.engagement.examinedOn !== undefined || hasEvidence(piece);
}

/** A weight in whole decibans with its sign; a finer one cannot be felt (Good, from memory). */
export function decibanWords(decibans: number): string {
  const whole = Math.round(decibans);
  return whole === 0 ? '0' : `${whole > 0 ? '+' : '−'}${Math.abs(whole)}`;
}

/** A shop in the middle of a sentence, said to be invented where it is. */
export function shopName({ name, invented }: { name: string; invented?: boolean }): string {
  const inSentence = name.replace(/^The /, 'the ');
  return invented === true && !/invented/i.test(name) ? `${inSentence} (invented)` : inSentence;
}
