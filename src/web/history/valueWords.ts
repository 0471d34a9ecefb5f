import { idWords } from '../../knowledge/idWords.ts';
import type { Json } from '../../piece/event.ts';
import { observation } from '../../piece/observation.ts';
import { expectedInWords } from '../../piece/observationWords.ts';
import { piecePart } from '../../piece/piece.ts';
import { makingKind, makingWords, readingId, readingWords } from '../../piece/readings.ts';
import { settledBy, settledByWords } from '../../piece/settlement.ts';
import { dayWords } from '../../units/days.ts';
import { formatMoney } from '../../units/money.ts';
import { purposeChoices } from '../engagement/purposes.ts';

/** What stood at a place of the document, as a person reads it; undefined for nothing. */
export function valueWords(path: readonly string[], value: Json | undefined): string | undefined {
  if (value === undefined || value === null || value === '') return undefined;
  if (typeof value === 'string') return textWords(path.join('.'), value);
  if (typeof value === 'number') return path.at(-1)?.endsWith('Cents') ? formatMoney(value) : String(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return value.map((one) => valueWords([], one) ?? '').join('–');
  const whole = path.length === 2 ? wholeEntryWords(path[0] as string, value) : undefined;
  if (whole !== undefined) return whole;
  if (path[0] === 'parts') return partWords(value);
  return Object.values(value)
    .flatMap((one) => valueWords([], one) ?? [])
    .join(', ');
}

/** An entry that is kept as one: what was found and how sure, the size as typed, the observation in its words. */
function wholeEntryWords(room: string, value: Json): string | undefined {
  const joined = (...said: (string | undefined)[]) => said.filter((each) => (each ?? '') !== '').join('; ');
  switch (room) {
    case 'findings':
      return joined(findingStateWords(value), textAt(value, 'words')) || undefined;
    case 'measures':
      return joined(textAt(value, 'asEntered'), textAt(value, 'words')) || undefined;
    case 'observations': {
      const read = observation.safeParse(value);
      return read.success ? joined(read.data.words, expectedInWords(read.data.expected)) : undefined;
    }
    case 'photos':
      return textAt(value, 'caption') || 'a photo without a caption';
    case 'owners':
    case 'comparables':
      return textAt(value, 'name') || 'not yet named';
    case 'damages':
      return joined(textAt(value, 'term'), textAt(value, 'where')) || 'not yet described';
    case 'bench':
      return joined(textAt(value, 'title'), textAt(value, 'says')) || undefined;
    default:
      return undefined;
  }
}

/** What was found and how sure; undefined for no finding. */
export function findingStateWords(finding: Json | undefined): string | undefined {
  const state = textAt(finding, 'state');
  const seen = state.replaceAll('-', ' ');
  if (seen === '') return undefined;
  if (state !== 'present' && state !== 'absent') return seen;
  const sure = textAt(finding, 'sure');
  return sure === 'fairly' ? `${seen}, fairly sure` : sure === 'hint' ? `${seen}, a hint` : seen;
}

/** A text that an entry holds under a name; empty for none. */
export function textAt(value: Json | undefined, key: string): string {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return '';
  const found = value[key];
  return typeof found === 'string' ? found : '';
}

/** What was said of a part as such: whether it is there, its woods, how it is made, words of one's own. */
function partWords(value: Json): string | undefined {
  const part = piecePart.safeParse(value);
  if (!part.success) return undefined;
  const { missing, woods, makes, words } = part.data;
  const made = Object.entries(makes).map(([make, is]) => (is ? make : `not ${make}`));
  const said = [...(missing ? ['missing'] : []), ...woods, ...made, ...(words === '' ? [] : [words])];
  return said.length === 0 ? undefined : said.join(', ');
}

function textWords(place: string, text: string): string {
  if (place === 'opinion.reading' || place === 'settled.condition') {
    const reading = readingId.safeParse(text);
    return reading.success ? readingWords[reading.data].title : text;
  }
  if (place === 'settled.making') {
    const making = makingKind.safeParse(text);
    return making.success ? makingWords[making.data].title : text;
  }
  if (place === 'settled.by') {
    const by = settledBy.safeParse(text);
    return by.success ? settledByWords[by.data].title : text;
  }
  if (place === 'engagement.purpose') return purposeChoices.find((one) => one.id === text)?.name ?? text;
  if (place === 'mode') return text === 'in-hand' ? 'In the hand' : 'In photographs only';
  if (place.startsWith('features.')) return idWords(text);
  return /^\d{4}-\d{2}-\d{2}$/.test(text) ? dayWords(text) : text;
}
