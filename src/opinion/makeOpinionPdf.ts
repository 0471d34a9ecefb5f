import type { OpinionDocument } from './opinionDocument.ts';
import { type PlateFile, scalePlates } from './pdf/scalePlate.ts';
import { setPages } from './pdf/setPages.ts';
import type { Paper } from './typst/plateLayout.ts';

/** What is set as a PDF: the document, and the pictures of its plates by photo id. */
export type OpinionPdfInput = { document: OpinionDocument; plates: readonly PlateFile[]; paper?: Paper };

/** Told what is being done, and how much of it is behind. */
export type OnPdfStep = (step: string, done: number, total: number) => void;

/**
 * The opinion as an accessible, tagged PDF (PDF/UA-1). The same input gives the same bytes.
 *
 * A picture that is missing or can't be read is left out with a sentence in its place. Signs that no font of the machine
 * holds are printed by their code point.
 *
 * @throws Error with a sentence where the document can't be set at all
 */
export async function makeOpinionPdf(
  { document, plates, paper = 'a4' }: OpinionPdfInput,
  onProgress: OnPdfStep = () => {},
): Promise<Uint8Array> {
  const total = plates.length + 1;
  const scaled = await scalePlates(plates, (done) => onProgress('Scaling the plates', done, total));
  onProgress('Setting the pages', plates.length, total);
  const pdf = await setPages(document, scaled, paper);
  onProgress('Ready', total, total);
  return pdf;
}
