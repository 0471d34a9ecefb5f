import { capital } from '../ground/words.ts';
import { meansPhrases } from '../piece/owner.ts';
import type { YearSpan } from '../units/years.ts';
import type { Holding } from './holding.ts';
import type { Placed } from './inOrder.ts';

/** The statement as it is printed: the chain in one paragraph, its notes, and the key to its signs. */
export type ProvenanceStatement = { text: string; notes: string[]; key: string };

/** The two words of the Guide for how sure an owner is; they are not the scale on which readings are told. */
const surenessWords = { plain: '', fairly: 'probably ', hint: 'possibly ' } as const;

/** How the statement is to be read; printed below it, since houses differ. */
export const statementKey =
  'Earliest first. A semicolon: the piece passed straight from one to the next. A period: how it passed is not known, or there is a gap. ' +
  'Parentheses: a dealer, agent, auction house or keeper. Square brackets: years of birth and death, or in business. ' +
  `“${capital(surenessWords.hint).trim()}” and “${surenessWords.fairly.trim()}”: how sure the examiner is of this owner; what each rests on stands in the notes.`;

/**
 * The chain of owners as the trade prints it.
 *
 * @param ordered  earliest first
 * @source conventions of the AAM Guide to Provenance Research (2001) as quoted in the Carnegie Museum of Art's drafts (2015, 2016), of which the
 *   openings were read; “by” and “until at least” for dates in doubt, after the same drafts, from memory
 */
export function provenanceStatement(ordered: readonly Placed[]): ProvenanceStatement {
  const notes: string[] = [];
  const phrases = ordered.map((holding) => {
    const source = holding.source.trim();
    notes.push(source === '' ? 'No document or mark is known for this.' : source);
    return `${phrase(holding)} (note ${notes.length})`;
  });
  const text = phrases.reduce((line, next, index) => {
    const joint = ordered[index]?.direct === 'yes' ? '; ' : '. ';
    return index === 0 ? capital(next) : `${line}${joint}${joint === '; ' ? next : capital(next)}`;
  }, '');
  return { text: text === '' ? '' : `${text}.`, notes, key: statementKey };
}

/** The statement as one text: chain, notes and key, each on a line of its own. */
export function statementText({ text, notes, key }: ProvenanceStatement): string {
  if (text === '') return '';
  return [text, ...notes.map((note, index) => `Note ${index + 1}: ${note}`), `Key: ${key}`].join('\n');
}

function phrase(holding: Holding): string {
  const { name, lived, how, place, sure, began, ended } = holding;
  const life = lifeWords(lived, isTrade(holding));
  const who = `${name.trim()}${life === '' ? '' : ` [${life}]`}`;
  const whoWhere = [who, place.trim()].filter((each) => each !== '').join(', ');
  const named = holding.role === 'owner' ? whoWhere : `(${whoWhere}, ${roleWords[holding.role]})`;
  const means = (meansPhrases as Readonly<Record<string, string>>)[how];
  const way = means === undefined ? named : `${means} ${named}`;
  const other = means === undefined && how.trim() !== '' ? how.trim() : '';
  const dates = [beganWords(began), endedWords(ended)].filter((each) => each !== '').join(' ');
  return `${surenessWords[sure]}${[way, other, dates].filter((each) => each !== '').join(', ')}`;
}

const roleWords = {
  owner: '',
  dealer: 'dealer',
  agent: 'agent',
  'auction-house': 'auction house',
  custodian: 'keeper',
} as const;

function isTrade({ role }: Holding): boolean {
  return role === 'dealer' || role === 'agent' || role === 'auction-house';
}

function lifeWords({ from, to }: Holding['lived'], trade: boolean): string {
  if (from === undefined && to === undefined) return '';
  if (from !== undefined && to !== undefined) return `${from}–${to}`;
  const [begins, ends] = trade ? ['in business from', 'in business until'] : ['born', 'died'];
  return from === undefined ? `${ends} ${to}` : `${begins} ${from}`;
}

function beganWords(began: YearSpan | undefined): string {
  if (began === undefined) return '';
  return began[0] === began[1] ? `${began[0]}` : `between ${began[0]} and ${began[1]}`;
}

function endedWords(ended: YearSpan | undefined): string {
  if (ended === undefined) return '';
  return ended[0] === ended[1] ? `until ${ended[0]}` : `until between ${ended[0]} and ${ended[1]}`;
}
