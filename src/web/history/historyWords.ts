import { inSentence } from '../../knowledge/inSentence.ts';
import type { Change, Json, RecordedEvent } from '../../piece/event.ts';
import { observation } from '../../piece/observation.ts';
import { expectedInWords, shortWords } from '../../piece/observationWords.ts';
import { fieldName } from './fieldName.ts';
import type { NameBook } from './nameBook.ts';
import { findingStateWords, textAt, valueWords } from './valueWords.ts';

/** An act as a person reads it: a sentence, and what stood there before and after where that is more than a word. */
export type HistoryEntry = {
  id: string;
  seq: number;
  at: string;
  who: string;
  device: string;
  sentence: string;
  before: string | undefined;
  after: string | undefined;
  /** True while a later act has taken this one back. */
  takenBack: boolean;
};

/**
 * The record of a piece as sentences, oldest first.
 *
 * @param events  as recorded, oldest first
 */
export function historyEntries(events: readonly RecordedEvent[], names: NameBook): HistoryEntry[] {
  const byId = new Map(events.map((event) => [event.id, event]));
  const takenBack = new Set<string>();
  for (const event of events) {
    if (event.of === undefined) continue;
    if (event.kind === 'undo') takenBack.add(event.of);
    if (event.kind === 'redo') takenBack.delete(event.of);
  }
  return events.map((event) => {
    const of = event.of === undefined ? undefined : byId.get(event.of);
    const told = actWords(event, names);
    return {
      id: event.id,
      seq: event.seq,
      at: event.at,
      who: event.who,
      device: event.device,
      sentence:
        event.kind === 'undo' || event.kind === 'redo'
          ? reversalWords(event.kind, of === undefined ? undefined : actWords(of, names).sentence)
          : `${told.sentence}${event.changes.some((one) => one.saw !== undefined) ? unseenWords : ''}`,
      before: told.before,
      after: told.after,
      takenBack: takenBack.has(event.id),
    };
  });
}

/** Said of an act that wrote over a value which its device had not seen. */
const unseenWords = ' What stood there before had not been seen on this device.';

function reversalWords(kind: 'undo' | 'redo', what: string | undefined): string {
  const act = kind === 'undo' ? 'Took back' : 'Brought back';
  return what === undefined ? `${act} an act.` : `${act}: ${inSentence(what)}`;
}

type Told = { sentence: string; before?: string | undefined; after?: string | undefined };

function actWords(event: Pick<RecordedEvent, 'kind' | 'changes'>, names: NameBook): Told {
  const first = event.changes[0];
  if (first === undefined) return { sentence: 'Did nothing.' };
  switch (event.kind) {
    case 'piece-opened':
      return { sentence: `Took the piece on${quoted(textAt(first.to, 'title'))}.` };
    case 'piece-put-away':
      return { sentence: first.to === true ? 'Put the piece away.' : 'Took the piece out again.' };
    case 'finding-recorded':
    case 'finding-withdrawn':
      return findingWords(first, names);
    case 'observation-recorded':
    case 'observation-withdrawn':
      return observationWords(first, names);
    case 'looked-over':
      return {
        sentence:
          first.to === true
            ? 'Looked the whole over for mends, later parts and changes, and found none.'
            : 'Took back that the whole was looked over and nothing later found.',
      };
    case 'case-settled':
      return first.path.length > 1
        ? fieldWords(event.changes.slice(0, 1), names)
        : {
            sentence: 'Recorded that the case is settled.',
            after: valueWords(['settled', 'by'], byOf(first.to)),
          };
    case 'settlement-withdrawn':
      return {
        sentence: 'Took back that the case is settled.',
        before: settledWords(first.from),
      };
    case 'measure-recorded':
    case 'measure-withdrawn':
      return measureWords(first, names);
    case 'bench-recorded':
      return {
        sentence: `Measured at the bench: ${textAt(first.to, 'title')}.`,
        after: textAt(first.to, 'says'),
      };
    case 'bench-withdrawn':
      return {
        sentence: `Withdrew from the bench: ${textAt(first.from, 'title')}.`,
        before: textAt(first.from, 'says'),
      };
    case 'owner-recorded':
    case 'owner-withdrawn':
      return entryWords(event, 'owner', names);
    case 'comparable-recorded':
    case 'comparable-withdrawn':
      return entryWords(event, 'sale', names);
    case 'damage-recorded':
    case 'damage-withdrawn':
      return entryWords(event, 'damage', names);
    case 'photo-added':
      return { sentence: `Added the photo ${names.photo(first.path[1] ?? '')}.` };
    case 'photo-withdrawn':
      return {
        sentence: `Withdrew the photo ${textAt(first.from, 'name') || names.photo(first.path[1] ?? '')}.`,
      };
    case 'mark-drawn':
      return { sentence: `Drew a mark on the photo ${names.photo(first.path[1] ?? '')}.` };
    case 'mark-withdrawn':
      return { sentence: `Withdrew a mark from the photo ${names.photo(first.path[1] ?? '')}.` };
    case 'opinion-issued':
      return { sentence: `Signed revision ${first.path[1] ?? ''}${byWords(first.to)}.` };
    case 'revision-begun':
      return { sentence: 'Began a new revision.' };
    case 'opinion-signed':
      return signedWords(event.changes);
    case 'overwrite-settled': {
      const told = fieldWords(event.changes, names);
      return { ...told, sentence: `Said which value holds: ${fieldName(first.path, names)}.` };
    }
    default:
      return fieldWords(event.changes, names);
  }
}

/** An entry of a list that came, changed in a field, or went. */
function entryWords({ changes }: Pick<RecordedEvent, 'changes'>, what: string, names: NameBook): Told {
  const first = changes[0] as Change;
  const name = (value: Json | undefined) => {
    const text = textAt(value, 'name') || textAt(value, 'term');
    return text === '' ? '' : ` “${text}”`;
  };
  if (first.path.length > 2) return fieldWords(changes, names);
  if (first.to === undefined) return { sentence: `Removed the ${what}${name(first.from)}.` };
  return changes.length > 1
    ? { sentence: `Entered ${changes.length} ${what}s.` }
    : { sentence: `Entered ${first.from === undefined ? 'another' : 'anew the'} ${what}${name(first.to)}.` };
}

function findingWords(change: Change, names: NameBook): Told {
  const what = findingName(change.path[1] ?? '', names);
  const before = findingStateWords(change.from);
  if (change.to === undefined) return { sentence: `Withdrew the finding ${what}.`, before };
  if (change.path.length > 2) {
    return {
      sentence: `Changed a word on the finding ${what}.`,
      before: valueWords(change.path, change.from),
      after: valueWords(change.path, change.to),
    };
  }
  const words = textAt(change.to, 'words');
  return {
    sentence: `Found ${what}: ${findingStateWords(change.to) ?? 'changed'}.`,
    before,
    after: words === '' ? undefined : words,
  };
}

function findingName(key: string, names: NameBook): string {
  const [sign = '', part] = key.split('@');
  return `“${names.sign(sign)}”${part === undefined ? '' : ` on the ${names.part(part)}`}`;
}

function observationWords({ from, to }: Change, names: NameBook): Told {
  const words = (value: Json | undefined) => `“${shortWords(textAt(value, 'words'))}”${onPart(value)}`;
  const onPart = (value: Json | undefined) => {
    const part = textAt(value, 'part');
    return part === '' ? '' : ` on the ${names.part(part)}`;
  };
  const before = expectationWords(from);
  if (to === undefined) return { sentence: `Withdrew the observation of one’s own ${words(from)}.`, before };
  const after = expectationWords(to);
  if (from === undefined) return { sentence: `Observed, beyond all signs: ${words(to)}.`, after };
  return words(from) === words(to)
    ? { sentence: `Changed the observation of one’s own ${words(to)}.`, before, after }
    : { sentence: `Changed the observation of one’s own ${words(from)} to ${words(to)}.`, before, after };
}

function expectationWords(value: Json | undefined): string | undefined {
  const read = observation.safeParse(value);
  return read.success ? expectedInWords(read.data.expected) : undefined;
}

function measureWords(change: Change, names: NameBook): Told {
  const name = names.measure(change.path[1] ?? '');
  const before = textAt(change.from, 'asEntered') || undefined;
  if (change.to === undefined) return { sentence: `Withdrew the measure “${name}”.`, before };
  return { sentence: `Measured “${name}”: ${textAt(change.to, 'asEntered')}.`, before };
}

function signedWords(changes: readonly Change[]): Told {
  const status = changes.find((change) => change.path.at(-1) === 'status')?.to;
  if (status !== 'signed') return { sentence: 'Opened the opinion again as a draft.' };
  const by = changes.find((change) => change.path.at(-1) === 'signedBy')?.to;
  return {
    sentence: typeof by === 'string' && by !== '' ? `Signed the opinion as ${by}.` : 'Signed the opinion.',
  };
}

function byWords(issued: Json | undefined): string {
  const by = textAt(issued, 'by');
  return by === '' ? '' : ` as ${by}`;
}

function fieldWords(changes: readonly Change[], names: NameBook): Told {
  const fields = changes.map((change) => fieldName(change.path, names));
  const first = changes[0];
  const only = changes.length === 1 && first !== undefined;
  const emptied = only && (first.to === undefined || first.to === '');
  const had = only && first.from !== undefined && first.from !== '';
  return {
    sentence: `${emptied ? 'Emptied' : had ? 'Changed' : 'Wrote'} ${fields.join(', ')}.`,
    before: only ? fieldValue(first.path, first.from, names) : undefined,
    after: only ? fieldValue(first.path, first.to, names) : undefined,
  };
}

function byOf(settled: Json | undefined): Json {
  return textAt(settled, 'by');
}

/** A verdict as it stood: what it turned out to be, and what settled it. */
function settledWords(settled: Json | undefined): string | undefined {
  const parts = ['making', 'condition', 'by', 'words'].flatMap(
    (field) => valueWords(['settled', field], textAt(settled, field)) ?? [],
  );
  return parts.length === 0 ? undefined : parts.join('; ');
}

/** What a field held; a part by its name, and findings by theirs. */
function fieldValue(path: readonly string[], value: Json | undefined, names: NameBook): string | undefined {
  if (path.join('.') === 'settled.rests' && Array.isArray(value))
    return value.length === 0 ? 'none' : value.map((key) => findingName(String(key), names)).join('; ');
  return path.at(-1) === 'part' && typeof value === 'string' && value !== ''
    ? names.part(value)
    : valueWords(path, value);
}

function quoted(text: string): string {
  return text === '' ? '' : ` as “${text}”`;
}
