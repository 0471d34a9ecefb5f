import type { PaperKind } from '../engagement/papers.ts';
import type { PhotoMark } from '../piece/photo.ts';

/** A stretch of text: plain, or set apart. Never markup: what a person entered is text and nothing else. */
export type Run = string | { strong: string } | { em: string } | { link: string; words: string };
export type Words = string | readonly Run[];

/** A picture drawn by the program, as SVG, with what it shows for a reader who cannot see it. */
export type DrawnPicture = {
  id: string;
  svg: string;
  caption: string;
  alternative: string;
  widthMm: number;
  heightMm: number;
};

/** A column of a table; `share` is its part of the width. */
export type Column = { name: string; share: number; end?: boolean };

/** A photo as it is printed, with its marks and what they point at. */
export type Plate = {
  number: number;
  photoId: string;
  sha256: string;
  mediaType: string;
  widthPx: number;
  heightPx: number;
  caption: string;
  alternative: string;
  /** Where and when it was taken, as far as the file says. */
  origin: string;
  marks: readonly (Pick<PhotoMark, 'number' | 'kind' | 'points'> & { says: string })[];
};

export type Block =
  | { kind: 'paragraph'; words: Words; as?: 'plain' | 'lead' | 'note' | 'own' }
  | { kind: 'heading'; words: string }
  | { kind: 'list'; items: readonly Words[]; as?: 'plain' | 'works' }
  | { kind: 'facts'; rows: readonly { name: string; words: readonly Words[] }[] }
  | {
      kind: 'table';
      caption: string;
      columns: readonly Column[];
      groups: readonly { name?: string; note?: string; rows: readonly (readonly Words[])[] }[];
    }
  | { kind: 'notice'; tone: 'notice' | 'caution'; title: string; words: readonly Words[] }
  | { kind: 'pictures'; pictures: readonly DrawnPicture[] }
  | { kind: 'key'; title: string; entries: readonly { svg: string; words: string }[] }
  | { kind: 'plate'; plate: Plate }
  /** Facts with a plate beside them, small and without its marks. */
  | { kind: 'front'; rows: readonly { name: string; words: readonly Words[] }[]; plate: Plate }
  /** Up to four plates in a row, small and without their marks: what is read beside them is shown large among the plates. */
  | { kind: 'strip'; plates: readonly Plate[] }
  | { kind: 'signature'; statements: readonly Words[]; name: string; day: string; draft: boolean };

/** One section of the opinion. `apart` begins a page; an `appendix` gets its letter from its place. */
export type Section = {
  id: string;
  title: string;
  blocks: readonly Block[];
  apart?: boolean;
  appendix?: boolean;
  /** The answer to what was asked before: on a page of its own, and folded on a screen. */
  answer?: boolean;
};

/** The whole opinion as data; PDF and other forms are set from it and add nothing of their own. */
export type OpinionDocument = {
  paper: PaperKind;
  /** What kind of paper it is, above the title. */
  above: string;
  title: string;
  /** What it is in a line: form, years, place. */
  line: string;
  /** Whose opinion it is, as it stands in the running foot. */
  author: string;
  draft: boolean;
  /** For an issued revision, which it is and of what record, as it stands in the running foot. */
  issued?: string;
  example: boolean;
  /** The day the document was made, `2026-11-25`. */
  madeOn: string;
  keywords: readonly string[];
  head: readonly Block[];
  sections: readonly Section[];
};

/** Every plate of a document, in order. */
export function platesOf(document: OpinionDocument): Plate[] {
  return document.sections.flatMap((section) =>
    section.blocks.flatMap((block) => (block.kind === 'plate' ? [block.plate] : [])),
  );
}

/** Every photo that a document shows, large or small, once each; where it is shown large, with its marks. */
export function platesIn(document: OpinionDocument): Plate[] {
  const blocks = [...document.head, ...document.sections.flatMap((section) => section.blocks)];
  const small = blocks.flatMap((block) =>
    block.kind === 'front' ? [block.plate] : block.kind === 'strip' ? block.plates : [],
  );
  return [...new Map([...small, ...platesOf(document)].map((plate) => [plate.photoId, plate])).values()];
}
