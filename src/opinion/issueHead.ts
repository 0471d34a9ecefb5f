/** What is printed of the signing and of the record it was made from; handed in, so that composing reads no clock or disk. */
export type IssueHead = {
  revision: number;
  by: string;
  /** The day it was signed, `2026-11-25`. */
  on: string;
  isNew: string;
  why: string;
  /** The revision before, which this one takes the place of. */
  before?: { revision: number; on: string };
  /** The record's own id, how many acts it held, and the digest over them. */
  recordId: string;
  count: number;
  head: string;
  /** SHA-256 over the hashes of the piece, the case, the weighing, the knowledge and the photos as they were kept. */
  contents: string;
};
