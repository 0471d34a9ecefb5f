import { z } from 'zod';
import { day } from './engagement.ts';

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/**
 * A revision of the opinion as it was signed and given out. What it was made from, and the PDF itself, stand in files of
 * the data folder; this is what the record says of them, so that any change of a byte there can be found.
 */
export const issuedRevision = z.strictObject({
  revision: z.number().int().min(1),
  by: z.string().min(1),
  on: day,
  /** When, by the device's clock, with its zone. */
  at: z.iso.datetime({ offset: true }),
  /** What is new in it and why it was made; empty in a first revision. */
  isNew: z.string().default(''),
  why: z.string().default(''),
  /** SHA-256 of the list of the revision's files, which holds the hash of each. */
  manifestSha256: sha256,
  pdfSha256: sha256,
  documentSha256: sha256,
  /** What was printed in it of the record: how many acts it held, and the digest over them. */
  head: sha256,
  count: z.number().int().min(1),
  programVersion: z.string(),
  knowledgeVersion: z.string(),
  knowledgeSha256: sha256,
});
export type IssuedRevision = z.infer<typeof issuedRevision>;

/** The revisions of a piece, the first one first. */
export function revisionsOf(piece: { issued: Readonly<Record<string, IssuedRevision>> }): IssuedRevision[] {
  return Object.values(piece.issued).sort((a, b) => a.revision - b.revision);
}

/** The revision given out last, or undefined where none was. */
export function lastRevision(piece: {
  issued: Readonly<Record<string, IssuedRevision>>;
}): IssuedRevision | undefined {
  return revisionsOf(piece).at(-1);
}
