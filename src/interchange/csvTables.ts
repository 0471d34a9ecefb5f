import type { Json } from '../piece/event.ts';
import type { Piece } from '../piece/piece.ts';

/** What ids stand for, in words, so that a table can be read by itself. */
export type NamesForTables = { part: (id: string) => string; sign: (id: string) => string };

/**
 * Everything a piece holds, as CSV by file name: one table for each of its lists, one row an entry, and `piece.csv` with all else, one
 * row a field. No value is left out.
 *
 * The form is that of RFC 4180, with a byte order mark, by which spreadsheets know UTF-8. A text that a spreadsheet would take for a formula
 * gets an apostrophe before it.
 */
export function csvTables(piece: Piece, names: NamesForTables): Map<string, string> {
  const { lists, fields } = apart(piece as unknown as { [key: string]: Json });
  return new Map([
    ['piece.csv', table([['field', 'value'], ...fields])],
    ...lists.map(([name, entries]) => [`${name}.csv`, table(listRows(entries, names))] as [string, string]),
  ]);
}

type Entries = Readonly<Record<string, Json>>;

/** The lists of a piece, by name; and every other value with its place. */
function apart(document: { [key: string]: Json }): { lists: [string, Entries][]; fields: string[][] } {
  const lists: [string, Entries][] = [];
  const fields: string[][] = [];
  for (const [name, value] of Object.entries(document)) {
    if (isList(value)) lists.push([name, value]);
    else fields.push(...leaves(value, name));
  }
  return { lists, fields };
}

/** Whether a value holds entries that carry their own key. */
function isList(value: Json | undefined): value is { [key: string]: Json } {
  const entries = isRecord(value) ? Object.entries(value) : [];
  return (
    entries.length > 0 &&
    entries.every(([key, one]) => isRecord(one) && (one.id === key || 'revision' in one))
  );
}

function listRows(entries: Entries, names: NamesForTables): string[][] {
  const rows = Object.entries(entries).map(([key, entry]) => {
    const cells = new Map(leaves(entry, '').map(([place = '', value = '']) => [place, value]));
    const { part, sign } = isRecord(entry) ? entry : {};
    return new Map([
      ['key', key],
      ...(typeof part === 'string' ? [['part in words', names.part(part)] as [string, string]] : []),
      ...(typeof sign === 'string' ? [['sign in words', names.sign(sign)] as [string, string]] : []),
      ...cells,
    ]);
  });
  const heads = [...new Set(rows.flatMap((row) => [...row.keys()]))];
  return [heads, ...rows.map((row) => heads.map((head) => row.get(head) ?? ''))];
}

/** Every value below a place, with the place written `a.b.c`; a list of plain values is one, with semicolons. */
function leaves(value: Json | undefined, at: string): string[][] {
  if (value === undefined || value === null) return [];
  if (Array.isArray(value) && value.every((each) => each === null || typeof each !== 'object'))
    return value.length === 0 ? [] : [[at, value.map(String).join('; ')]];
  if (typeof value !== 'object') return [[at, String(value)]];
  const inner = Array.isArray(value)
    ? value.map((each, index) => [String(index + 1), each] as const)
    : Object.entries(value);
  return inner.flatMap(([key, each]) => leaves(each, at === '' ? key : `${at}.${key}`));
}

function table(rows: readonly (readonly string[])[]): string {
  return `\uFEFF${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

function cell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) && !/^[+-]?[\d.]+$/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function isRecord(value: Json | undefined): value is { [key: string]: Json } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
