import { partsOf } from '../drawing/partsOf.ts';
import type { PaperKind } from '../engagement/papers.ts';
import { capital } from '../ground/words.ts';
import { idWords } from '../knowledge/idWords.ts';
import type { Form, FormPart, Knowledge } from '../knowledge/schema.ts';
import type { Photo } from '../piece/photo.ts';
import type { Piece } from '../piece/piece.ts';
import { platesOf } from '../piece/plates.ts';
import type { Weighing } from '../weighing/weighing.ts';
import type { IssueHead } from './issueHead.ts';
import type { DrawnPicture } from './opinionDocument.ts';

/** What an opinion is composed from. Nothing is fetched: the day, the versions and the drawing are handed in. */
export type OpinionInput = {
  piece: Piece;
  /** Left out where nothing was weighed: no findings, or a form the knowledge does not know. */
  weighing?: Weighing | undefined;
  knowledge: Knowledge;
  /** The views of the piece with the standing of each part, as `drawStanding` makes them. */
  drawing: readonly DrawnPicture[];
  /** The day the document is made, `2026-11-25`. */
  madeOn: string;
  /** The version of the program. */
  version: string;
  /** Which paper is made; the full report when left out. */
  paper?: PaperKind | undefined;
  /** The signing that the document is issued by; without it, it is a draft. */
  issue?: IssueHead | undefined;
};

/** The input with the names that every section needs. */
export type OpinionMaterial = OpinionInput & {
  form: Form | undefined;
  parts: readonly FormPart[];
  /** Name of a sign, or its id in words where the knowledge no longer has it. */
  signName: (sign: string) => string;
  /** `left side rail`, or `the piece as a whole`. */
  partName: (part: string | null | undefined) => string;
  /** The number of the plate a photo is printed as. */
  plateNumber: (photoId: string) => number | undefined;
  /** The photos that are printed, in their order. */
  plates: readonly { photo: Photo; plate: number }[];
};

/** Looks up, once for all sections, what things are called. */
export function materialOf(input: OpinionInput): OpinionMaterial {
  const { piece, knowledge } = input;
  const form = knowledge.forms[piece.form];
  const parts = form === undefined ? [] : partsOf(form, piece.features);
  const plates = platesOf(piece).flatMap(({ photo, plate }) =>
    plate === undefined ? [] : [{ photo, plate }],
  );
  const numbers = new Map(plates.map(({ photo, plate }) => [photo.id, plate]));
  return {
    ...input,
    form,
    parts,
    signName: (sign) => knowledge.signs[sign]?.name ?? capital(idWords(sign)),
    partName: (part) =>
      part === undefined || part === null || part === 'whole'
        ? 'the piece as a whole'
        : (form?.parts.find((each) => each.id === part)?.name ?? idWords(part)),
    plateNumber: (photoId) => numbers.get(photoId),
    plates,
  };
}
