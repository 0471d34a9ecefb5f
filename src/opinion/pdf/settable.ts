import type { OpinionDocument } from '../opinionDocument.ts';
import { fontCoverage } from './fontCoverage.ts';

/**
 * The document with every sign that our own faces lack written by its code point (`[U+4E2D]`), so that it can be set on
 * any machine and the reader sees that something stood there.
 */
export function settable<Document = OpinionDocument>(document: Document, fonts: readonly Buffer[]): Document {
  const covers = fonts.map(fontCoverage);
  const known = new Map<number, boolean>();
  const has = (codePoint: number) => {
    const answer = known.get(codePoint) ?? covers.every((cover) => cover(codePoint));
    known.set(codePoint, answer);
    return answer;
  };
  const written = (text: string) =>
    [...text]
      .map((sign) => {
        const codePoint = sign.codePointAt(0) ?? 0xfffd;
        return has(codePoint) || /\s/u.test(sign)
          ? sign
          : `[U+${codePoint.toString(16).toUpperCase().padStart(4, '0')}]`;
      })
      .join('');
  return throughout(document, written) as Document;
}

/** The same data with every text but the drawings and the links' addresses put through `write`. */
function throughout(value: unknown, write: (text: string) => string, key = ''): unknown {
  if (typeof value === 'string') return kept.has(key) ? value : write(value);
  if (Array.isArray(value)) return value.map((each) => throughout(each, write, key));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [name, throughout(each, write, name)]),
  );
}

const kept = new Set(['svg', 'id', 'photoId', 'sha256', 'kind', 'as', 'tone', 'link', 'madeOn', 'mediaType']);
