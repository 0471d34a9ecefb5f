import { createHash } from 'node:crypto';

/** What an issued opinion says of itself in its file, beside what it prints. */
export type CheckLine = {
  piece: string;
  revision: number;
  record: string;
  head: string;
  count: number;
  contents: string;
};

/** What a file's check line shows: `whole` is true where no byte of the file differs from when it was issued. */
export type CheckedFile = { line: CheckLine; whole: boolean };

const lineStart = '%Underside-opinion ';

/**
 * The PDF with its check line: a comment before the last `startxref`, where readers pass over it, with the SHA-256 of all
 * other bytes of the file. A file cannot hold the hash of itself, but it can hold the hash of all the rest.
 *
 * The line lets any change be found by whoever has only the file. It is no signature: who knows this way of making it can
 * make another. Whether it is the file that was issued only the record can tell.
 *
 * @source comments and the end of the file: ISO 32000-1, 7.2.3 and 7.5.5
 */
export function withCheckLine(pdf: Uint8Array, line: CheckLine): Uint8Array {
  const file = Buffer.from(pdf);
  const at = file.lastIndexOf('startxref');
  if (at < 0) throw new RangeError('This is no PDF: it has no startxref.');
  const fields = encodeURIComponent(JSON.stringify(line));
  const before = Buffer.concat([file.subarray(0, at), Buffer.from(`${lineStart}${fields} sha256=`)]);
  const after = Buffer.concat([Buffer.from('\n'), file.subarray(at)]);
  return Buffer.concat([before, Buffer.from(hashOf(before, after)), after]);
}

/** Reads the check line of a file and tells whether the rest is as it was, or undefined where it has none. */
export function checkFile(bytes: Uint8Array): CheckedFile | undefined {
  const file = Buffer.from(bytes);
  const start = file.lastIndexOf(lineStart);
  const end = start < 0 ? -1 : file.indexOf('\n', start);
  if (end < 0) return undefined;
  const found = /^%Underside-opinion (\S+) sha256=([0-9a-f]{64})$/.exec(file.toString('latin1', start, end));
  const line = found?.[1] === undefined ? undefined : readLine(found[1]);
  if (found === null || line === undefined) return undefined;
  return { line, whole: hashOf(file.subarray(0, end - 64), file.subarray(end)) === found[2] };
}

function hashOf(before: Uint8Array, after: Uint8Array): string {
  return createHash('sha256').update(before).update(after).digest('hex');
}

function readLine(text: string): CheckLine | undefined {
  try {
    const { piece, revision, record, head, count, contents } = JSON.parse(decodeURIComponent(text));
    const words = [piece, record, head, contents].every((each) => typeof each === 'string');
    return words && Number.isInteger(revision) && Number.isInteger(count)
      ? { piece, revision, record, head, count, contents }
      : undefined;
  } catch {
    return undefined;
  }
}
