import type { Piece } from '../../piece/piece.ts';
import { readingWords } from '../../piece/readings.ts';
import type { OpinionDocument } from '../opinionDocument.ts';

/** What stands where a name stood. */
const gap = '[name]';

/**
 * The document without the people and places of the job: every name entered as client, owner, address, place of examination or owner in
 * the chain is taken out wherever it stands, whole or in its single words; so are title and author, and who signed.
 *
 * Names that were entered nowhere but in running words can't be known here: the examiner reads the paper before it is handed out.
 */
export function withoutNames(document: OpinionDocument, piece: Piece): OpinionDocument {
  const names = namesOf(piece);
  const plain = { ...document, title: document.above, line: '', author: '', head: [], keywords: [] };
  if (names.length === 0) return plain;
  const found = new RegExp(
    `(?<![\\p{L}\\p{N}])(?:${names.map(escaped).join('|')})(?:[’']s)?(?![\\p{L}\\p{N}])`,
    'giu',
  );
  const without = (text: string) => text.replace(found, gap).replace(/\[name\](?:[\s,.&]*\[name\])+/g, gap);
  return throughout(plain, without) as OpinionDocument;
}

/** Each name whole, then its own words that begin with a capital and are no common word of the trade; the longest first. */
export function namesOf({ engagement, owners, opinion, claim }: Piece): string[] {
  const people = [engagement.client, engagement.owner, ...Object.values(owners).map(({ name }) => name)];
  const places = [
    engagement.clientAddress,
    engagement.examinedAt,
    claim.place ?? '',
    opinion.place,
    ...Object.values(owners).map(({ place }) => place),
  ];
  const entered = [
    ...people,
    ...places,
    engagement.examiner,
    engagement.examinerAddress,
    opinion.signedBy,
  ].map((each) => each.trim());
  const words = entered.flatMap((each) => each.match(/\p{Lu}[\p{L}’'-]{2,}/gu) ?? []);
  return [
    ...new Set([
      ...entered.filter((each) => each.length > 2),
      ...words.filter((word) => !common.has(word.toLowerCase())),
    ]),
  ].toSorted((a, b) => b.length - a.length);
}

/** Words that begin a name or an address and say nothing of whose it is; and the words the readings themselves are told in. */
const common = new Set([
  ...[
    'the',
    'and',
    'mrs',
    'miss',
    'mr',
    'dr',
    'street',
    'road',
    'lane',
    'avenue',
    'house',
    'room',
    'museum',
    'family',
    'trustees',
    'estate',
  ],
  ...[
    'company',
    'old',
    'new',
    'north',
    'south',
    'east',
    'west',
    'dining',
    'workroom',
    'daylight',
    'not',
    'unknown',
    'seen',
    'light',
    'none',
  ],
  ...Object.values(readingWords).flatMap(({ title }) => title.toLowerCase().match(/\p{L}+/gu) ?? []),
]);

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** The same data with every text a reader reads put through `write`. */
function throughout(value: unknown, write: (text: string) => string, key = ''): unknown {
  if (typeof value === 'string') return kept.has(key) ? value : write(value);
  if (Array.isArray(value)) return value.map((each) => throughout(each, write, key));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [name, throughout(each, write, name)]),
  );
}

const kept = new Set([
  'svg',
  'id',
  'photoId',
  'sha256',
  'kind',
  'as',
  'tone',
  'mediaType',
  'paper',
  'madeOn',
]);
