import type { PaperForm, PaperKind } from '../engagement/papers.ts';
import { caseFromPiece } from '../evidence/caseFromPiece.ts';
import { markOwn } from '../knowledge/markOwn.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { hasEvidence } from '../piece/hasEvidence.ts';
import type { Piece } from '../piece/piece.ts';
import { weighCase } from '../weighing/weighCase.ts';
import type { Weighing } from '../weighing/weighing.ts';
import { composeOpinion } from './composeOpinion.ts';
import { documentDocx } from './docx/documentDocx.ts';
import { drawStanding } from './drawStanding.ts';
import { paperPage } from './html/paperPage.ts';
import type { IssueHead } from './issueHead.ts';
import type { OnPdfStep } from './makeOpinionPdf.ts';
import type { OpinionDocument } from './opinionDocument.ts';
import { markedPlates } from './pdf/markedPlate.ts';
import { type PlateFile, scalePlates } from './pdf/scalePlate.ts';
import { setPages } from './pdf/setPages.ts';
import type { Paper } from './typst/plateLayout.ts';

/** Everything an opinion is set from. Day, year and versions are handed in. */
export type OpinionOf = {
  piece: Piece;
  knowledge: Knowledge;
  /** The current year: nothing can have been made later. */
  yearNow: number;
  /** The day printed on the document, `2026-11-25`. */
  madeOn: string;
  /** The version of the program. */
  version: string;
  /** How many redraws of the figures; as many as is usual when left out. */
  draws?: number;
  /** What the findings say, where the case was weighed before: then it is not weighed again. */
  weighing?: Weighing;
  /** Which paper is made; the full report when left out. */
  paper?: PaperKind;
  /** The signing that the document is issued by; without it, it is a draft. */
  issue?: IssueHead;
};

/**
 * Weighs a piece, composes its opinion or another paper of it, and sets it as PDF, DOCX or a page: the whole way from the record to the paper.
 *
 * @param input.plates  pictures by photo id, as files or bytes: JPEG, PNG, WebP or TIFF; hand in a derived JPEG for HEIC
 * @param onProgress    told the step and how much of it is done
 */
export async function setOpinion(
  input: OpinionOf & { plates: readonly PlateFile[]; sheet?: Paper; as?: PaperForm },
  onProgress: OnPdfStep = () => {},
): Promise<Uint8Array> {
  const { plates, sheet = 'a4', as = 'pdf' } = input;
  const total = plates.length + 2;
  onProgress('Weighing the findings', 0, total);
  const scaling = scalePlates(plates, (done) => onProgress('Scaling the plates', done + 1, total));
  const document = opinionOf(input, (share) => onProgress('Weighing the findings', share, total));
  const scaled = await scaling;
  onProgress('Setting the pages', total - 1, total);
  const bytes =
    as === 'pdf'
      ? await setPages(document, scaled, sheet)
      : as === 'docx'
        ? await documentDocx(document, await markedPlates(document, scaled))
        : new TextEncoder().encode(paperPage(document, await markedPlates(document, scaled)));
  onProgress('Ready', total, total);
  return bytes;
}

/** The opinion on a piece as data: weighed, drawn and composed. */
export function opinionOf(input: OpinionOf, onShare: (share: number) => void = () => {}): OpinionDocument {
  const { piece, madeOn, version, issue } = input;
  const knowledge = markOwn(input.knowledge, ownMarks);
  const weighing = input.weighing ?? weighed(input, onShare);
  const form = knowledge.forms[piece.form];
  const drawing = form === undefined ? [] : drawStanding(form, piece, weighing);
  return composeOpinion({ piece, weighing, knowledge, drawing, madeOn, version, issue, paper: input.paper });
}

/** How a sign or a shop that the examiner added is named wherever the document names it. */
const ownMarks = { sign: 'examiner’s own sign', shop: 'examiner’s own file' };

/** The weighing, or none where there is nothing to weigh or the form is not known. */
export function weighed(
  { piece, knowledge: plain, yearNow, draws }: Pick<OpinionOf, 'piece' | 'knowledge' | 'yearNow' | 'draws'>,
  onShare: (share: number) => void,
): Weighing | undefined {
  const knowledge = markOwn(plain, ownMarks);
  if (!hasEvidence(piece)) return undefined;
  const result = weighCase(
    { ...caseFromPiece(piece), ...(draws === undefined ? {} : { draws }) },
    knowledge,
    {
      yearNow,
      onProgress: (share) => {
        onShare(share);
        return true;
      },
    },
  );
  return result.ok ? result.output : undefined;
}
