import { createHash } from 'node:crypto';

/** The files that a revision rests on; the document and the PDF are made from them. */
const restsOn = ['piece.json', 'case.json', 'weighing.json', 'knowledge.json', 'photos.json'] as const;

/** SHA-256 over lines of name and SHA-256, in the order of `restsOn`: the one hash that is printed. */
export function contentsHash(files: ReadonlyMap<string, Uint8Array>): string {
  const line = (name: string) => `${name} ${sha256(files.get(name) ?? new Uint8Array())}\n`;
  return sha256(restsOn.map(line).join(''));
}

function sha256(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}
