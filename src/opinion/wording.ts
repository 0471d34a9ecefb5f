import type { Standing } from '../drawing/hatching.ts';
import type { Purpose } from '../piece/engagement.ts';
import type { FindingState, Sureness } from '../piece/finding.ts';
import type { Piece } from '../piece/piece.ts';

/** How each standing is hatched, in words. */
export const hatchWords: Record<Standing, string> = {
  'of-the-making': 'no hatching',
  repair: 'slanting lines',
  improve: 'crossed lines',
  'other-old': 'dots',
  unsure: 'sparse dashes',
};

export const purposeWords: Record<Purpose, string> = {
  curiosity: 'To know what it is',
  insurance: 'Insurance',
  estate: 'An estate',
  donation: 'A donation',
  division: 'Division among heirs',
  sale: 'A sale',
  purchase: 'A purchase',
  court: 'A court',
};

export const stateWords: Record<FindingState, string> = {
  present: 'Present',
  absent: 'Absent',
  'could-not-tell': 'Could not tell',
};

export const surenessWords: Record<Sureness, string> = {
  plain: 'plain',
  fairly: 'fairly sure',
  hint: 'a hint',
};

/** A day as a letter writes it: `25 November 2026`; anything else as it stands. */
export function dayWords(day: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(day);
  const month = months[Number(found?.[2]) - 1];
  return found === null || month === undefined ? day : `${Number(found[3])} ${month} ${found[1]}`;
}

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** A text with its first letter a capital. */
export function capital(text: string): string {
  const first = [...text][0] ?? '';
  return first.toUpperCase() + text.slice(first.length);
}

/** `a, b and c`. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

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

/** Whether anything says that the piece was looked at: a day or a finding. */
export function isExamined({ engagement, findings }: Pick<Piece, 'engagement' | 'findings'>): boolean {
  return engagement.examinedOn !== undefined || Object.keys(findings).length > 0;
}

/** `1 finding`, `2 findings`. */
export function counted(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}

/**
 * A probability as a count: `97 in 100`. Elicited figures carry no more than 999 in 1000, so what lies beyond is
 * printed as that bound.
 */
export function outOf(probability: number): string {
  const held = Math.min(0.999, Math.max(0.001, probability));
  return held >= 0.995 || held < 0.01
    ? `${Math.round(held * 1000)} in 1000`
    : `${Math.round(held * 100)} in 100`;
}

/** Words for how probable a thing is after weighing; printed with their bounds. */
export const probabilityBands: readonly { from: number; words: string; adverb: string }[] = [
  { from: 0.99, words: 'almost certain', adverb: 'almost certainly' },
  { from: 0.9, words: 'very probable', adverb: 'very probably' },
  { from: 0.7, words: 'probable', adverb: 'probably' },
  { from: 0.4, words: 'an even chance', adverb: 'perhaps' },
  { from: 0.1, words: 'possible', adverb: 'possibly' },
  { from: 0.01, words: 'improbable', adverb: 'improbably' },
  { from: 0, words: 'all but excluded', adverb: 'hardly' },
];

/** The band a probability falls in; a bound belongs to the band above it. */
export function probabilityBand(probability: number): (typeof probabilityBands)[number] {
  return probabilityBands.find((each) => probability >= each.from) ?? (probabilityBands[0] as never);
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

/** The states a sign’s figures are given for, in words. */
export const stateNames: Record<string, string> = {
  period: 'Work of the period',
  'bench-copy': 'Later copy by hand',
  'machine-copy': 'Later copy by machine',
  'to-deceive': 'Made to deceive',
  later: 'Later repair',
  'of-the-making': 'Of the making',
  repair: 'Honest later repair',
  improve: 'Later, to improve',
  'other-old': 'From another old piece',
  hand: 'Worked by hand',
  'early-machine': 'Early machine work',
  'modern-machine': 'Modern machine work',
  natural: 'Come with time and use',
  none: 'Fresh, unused',
  imitated: 'Imitated',
  happened: 'If it happened',
  not: 'If it did not',
  'in-use': 'When it was in use',
  'out-of-use': 'Outside those years',
};
