import { caseFromPiece } from '../evidence/caseFromPiece.ts';
import type { Json } from '../piece/event.ts';
import type { Weighing } from '../weighing/weighing.ts';
import { contentsHash } from './contentsHash.ts';
import type { IssueHead } from './issueHead.ts';
import type { OnPdfStep } from './makeOpinionPdf.ts';
import { withCheckLine } from './pdf/checkLine.ts';
import { type PlateFile, scalePlates } from './pdf/scalePlate.ts';
import { setPages } from './pdf/setPages.ts';
import { type OpinionOf, opinionOf, weighed } from './setOpinion.ts';
import type { Paper } from './typst/plateLayout.ts';

/** A photo as it is bound to a revision. */
export type BoundPhoto = { id: string; sha256: string; bytes: number };

/** What a revision is made from. `document` is the piece exactly as recorded, `photos` were hashed just before. */
export type IssueOf = Omit<OpinionOf, 'weighing'> & {
  document: Json;
  photos: readonly BoundPhoto[];
  plates: readonly PlateFile[];
  sheet?: Paper;
  head: Omit<IssueHead, 'contents'>;
};

/** A revision's files by name, and what the record will say of them. */
export type IssuedFiles = { files: Map<string, Uint8Array>; contents: string; knowledgeVersion: string };

/**
 * Makes all files of a revision: what it rests on (piece, case, weighing, knowledge, photos), the document as data, and
 * the PDF. Writes nothing.
 *
 * @throws Error with a sentence where the opinion can't be set, or where it departs from the findings and doesn't say why
 */
export async function setIssued(input: IssueOf, onProgress: OnPdfStep = () => {}): Promise<IssuedFiles> {
  const { piece, knowledge, plates, photos, sheet = 'a4' } = input;
  const total = plates.length + 3;
  onProgress('Weighing the findings', 0, total);
  const scaling = scalePlates(plates, (done) => onProgress('Scaling the plates', done + 1, total));
  const weighing = weighed(input, (share) => onProgress('Weighing the findings', share, total));
  refuseSilentDeparture(input, weighing);
  const rests = new Map<string, Uint8Array>([
    ['piece.json', json(input.document)],
    ['case.json', json(caseFromPiece(piece))],
    ['weighing.json', json(weighing ?? null)],
    ['knowledge.json', json(knowledge)],
    ['photos.json', json(photos)],
  ]);
  const contents = contentsHash(rests);
  const issue: IssueHead = { ...input.head, contents };
  const signed = {
    ...piece,
    opinion: { ...piece.opinion, status: 'signed' as const, signedBy: issue.by, signedOn: issue.on },
  };
  const document = opinionOf({
    ...input,
    piece: signed,
    issue,
    ...(weighing === undefined ? {} : { weighing }),
  });
  const scaled = await scaling;
  onProgress('Setting the pages', total - 2, total);
  const pages = await setPages(document, scaled, sheet);
  const { revision, recordId: record, head, count } = issue;
  const pdf = withCheckLine(pages, { piece: piece.id, revision, record, head, count, contents });
  onProgress('Saving the revision', total - 1, total);
  return {
    files: new Map([...rests, ['opinion.json', json(document)], ['opinion.pdf', pdf]]),
    contents,
    knowledgeVersion: weighing?.versions.knowledge ?? knowledge.version,
  };
}

function refuseSilentDeparture({ piece: { opinion } }: IssueOf, weighing: Weighing | undefined): void {
  if (weighing === undefined || opinion.reading === weighing.leading || opinion.departure.trim() !== '')
    return;
  throw new Error(
    'You conclude on another reading than the findings lead to: say why you depart from it on the opinion’s page, then sign.',
  );
}

function json(value: unknown): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify(value)}\n`);
}
