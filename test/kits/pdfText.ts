import { inflateSync } from 'node:zlib';

/** What a test reads of a PDF: its objects as text, and what each page prints, in the order it is written. */
export type ReadPdf = { objects: Map<number, string>; pages: string[] };

/**
 * Reads a PDF as our compiler writes it: a plain table of objects, deflated streams, two-byte character codes with a
 * map to Unicode. Enough to see what stands on a page; no general reader.
 *
 * @source ISO 32000-1, 7.5 (file structure) and 9.10.3 (ToUnicode maps), from memory
 */
export function readPdf(bytes: Uint8Array): ReadPdf {
  const file = Buffer.from(bytes);
  const objects = new Map<number, string>();
  const streams = new Map<number, string>();
  for (const [number, at] of objectOffsets(file)) {
    const text = file.toString('latin1', at, endOf(file, at));
    objects.set(number, text);
    const stream = streamOf(file, at, text);
    if (stream !== undefined) streams.set(number, stream);
  }
  const kids = /\/Kids \[([^\]]*)\]/.exec(
    [...objects.values()].find((one) => one.includes('/Type /Pages')) ?? '',
  );
  const pages = references(kids?.[1] ?? '').map((page) =>
    pageText(objects.get(page) ?? '', objects, streams),
  );
  return { objects, pages };
}

function objectOffsets(file: Buffer): [number, number][] {
  const start = Number(/startxref\s+(\d+)/.exec(file.toString('latin1', file.length - 200))?.[1]);
  const table = file.toString('latin1', start);
  const rows = [...table.matchAll(/^(\d{10}) \d{5} ([nf])/gm)];
  return rows.flatMap((row, number) =>
    row[2] === 'n' ? [[number, Number(row[1])] as [number, number]] : [],
  );
}

function endOf(file: Buffer, at: number): number {
  const stream = file.indexOf('stream\n', at, 'latin1');
  const end = file.indexOf('endobj', at, 'latin1');
  return stream >= 0 && stream < end ? stream : end;
}

function streamOf(file: Buffer, at: number, head: string): string | undefined {
  const length = /\/Length (\d+)/.exec(head);
  const start = at + head.length;
  if (length === null || !file.toString('latin1', start, start + 7).startsWith('stream')) return undefined;
  const body = file.subarray(start + 7, start + 7 + Number(length[1]));
  if (!head.includes('/FlateDecode')) return body.toString('latin1');
  try {
    return inflateSync(body).toString('latin1');
  } catch {
    return undefined;
  }
}

function references(text: string): number[] {
  return [...text.matchAll(/(\d+) 0 R/g)].map((found) => Number(found[1]));
}

function pageText(page: string, objects: Map<number, string>, streams: Map<number, string>): string {
  const fonts = /\/Font <<([^>]*)>>/.exec(page)?.[1] ?? '';
  const maps = new Map(
    [...fonts.matchAll(/\/(\w+) (\d+) 0 R/g)].map(([, name = '', font]) => {
      const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(Number(font)) ?? '');
      return [name, unicodeMap(streams.get(Number(map?.[1])) ?? '')] as const;
    }),
  );
  const contents = /\/Contents (\d+) 0 R/.exec(page);
  return shownText(streams.get(Number(contents?.[1])) ?? '', maps);
}

/** The text of a content stream: every string that is shown, each stretch of text on a line of its own. */
function shownText(content: string, maps: Map<string, Map<number, string>>): string {
  let map = new Map<number, string>();
  let text = '';
  const tokens = /\/(\w+) [\d.-]+ Tf|<([0-9A-Fa-f]*)>|\(|\bET\b/g;
  for (let found = tokens.exec(content); found !== null; found = tokens.exec(content)) {
    if (found[1] !== undefined) map = maps.get(found[1]) ?? new Map();
    else if (found[2] !== undefined) text += decoded(Buffer.from(found[2], 'hex'), map);
    else if (found[0] === 'ET') text += '\n';
    else {
      const end = literalEnd(content, found.index);
      text += decoded(literal(content.slice(found.index + 1, end)), map);
      tokens.lastIndex = end + 1;
    }
  }
  return text;
}

/** Where a string in parentheses ends: pairs within it count, escaped ones do not. */
function literalEnd(content: string, start: number): number {
  let depth = 0;
  for (let at = start; at < content.length; at++) {
    if (content[at] === '\\') at++;
    else if (content[at] === '(') depth++;
    else if (content[at] === ')' && --depth === 0) return at;
  }
  return content.length;
}

function decoded(codes: Buffer, map: Map<number, string>): string {
  let text = '';
  for (let at = 0; at + 1 < codes.length; at += 2) text += map.get(codes.readUInt16BE(at)) ?? '';
  return text;
}

const escapes: Record<string, number> = { n: 10, r: 13, t: 9, b: 8, f: 12 };

function literal(text: string): Buffer {
  const bytes: number[] = [];
  for (const found of text.matchAll(/\\([0-7]{1,3}|[\s\S])|[\s\S]/g)) {
    const escaped = found[1];
    if (escaped === undefined) bytes.push(found[0].charCodeAt(0));
    else if (/^[0-7]/.test(escaped)) bytes.push(Number.parseInt(escaped, 8));
    else bytes.push(escapes[escaped] ?? escaped.charCodeAt(0));
  }
  return Buffer.from(bytes);
}

function unicodeMap(stream: string): Map<number, string> {
  const map = new Map<number, string>();
  for (const block of stream.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, code = '', text = ''] of (block[1] ?? '').matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g))
      map.set(Number.parseInt(code, 16), Buffer.from(text, 'hex').swap16().toString('utf16le'));
  for (const block of stream.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from = '', to = '', text = ''] of (block[1] ?? '').matchAll(
      /<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g,
    )) {
      const first = Buffer.from(text, 'hex').swap16().toString('utf16le').codePointAt(0) ?? 0;
      for (let code = Number.parseInt(from, 16); code <= Number.parseInt(to, 16); code++)
        map.set(code, String.fromCodePoint(first + code - Number.parseInt(from, 16)));
    }
  return map;
}

/** A text with all spaces taken out, so that line ends and gaps between glyphs do not matter. */
export function withoutSpaces(text: string): string {
  return text.replace(/\s+/gu, '');
}
