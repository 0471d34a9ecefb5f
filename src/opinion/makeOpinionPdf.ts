import { resolve } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { type OpinionDocument, platesOf } from './opinionDocument.ts';
import { opinionTypst, type Paper } from './opinionTypst.ts';
import { readFonts } from './pdf/fonts.ts';
import { type PlateFile, type ScaledPlate, scalePlate } from './pdf/scalePlate.ts';
import { settable } from './pdf/settable.ts';
import { type PicturesAtHand, platePath } from './typst/typstPlate.ts';

/** What is set as a PDF: the document, and the pictures of its plates by photo id. */
export type OpinionPdfInput = { document: OpinionDocument; plates: readonly PlateFile[]; paper?: Paper };

/** Told what is being done, and how much of it is behind. */
export type OnPdfStep = (step: string, done: number, total: number) => void;

/** A folder that is never made: Typst has no file to read but those handed to it. */
const nowhere = resolve('/underside-opinion-has-no-folder');

/**
 * The opinion as an accessible, tagged PDF (PDF/UA-1). The same input gives the same bytes.
 *
 * A picture that can't be read is left out with a sentence in its place. Signs that none of the machine's fonts hold are
 * printed by their code point.
 *
 * @throws Error with a sentence where the document can't be set at all
 */
export async function makeOpinionPdf(
  { document, plates, paper = 'a4' }: OpinionPdfInput,
  onProgress: OnPdfStep = () => {},
): Promise<Uint8Array> {
  const wanted = platesOf(document);
  const total = wanted.length + 2;
  const pictures = new Map<string, ScaledPlate & { path: string }>();
  const turns = wanted.map((plate) => ({ plate, file: plates.find((each) => each.id === plate.photoId) }));
  let done = 0;
  await inTurns(turns, 2, async ({ plate, file }) => {
    const scaled = file === undefined ? undefined : await scalePlate(file);
    if (scaled !== undefined) pictures.set(plate.photoId, { ...scaled, path: platePath(plate) });
    done += 1;
    onProgress('Scaling the plates', done, total);
  });
  onProgress('Setting the pages', wanted.length, total);
  const fonts = await readFonts();
  const compiler = NodeCompiler.create({ workspace: nowhere, fontArgs: [{ fontBlobs: fonts }] });
  for (const { path, jpeg } of pictures.values()) compiler.mapShadow(shadowPath(path), jpeg);
  try {
    const pdf =
      pdfOf(compiler, document, paper, pictures) ??
      pdfOf(compiler, settable(document, fonts), paper, pictures);
    if (pdf === undefined)
      throw new Error(
        'The opinion could not be set: a sign in it can’t be printed. Look for odd signs in the last words entered.',
      );
    onProgress('Ready', total, total);
    return pdf;
  } finally {
    compiler.resetShadow();
    compiler.evictCache(0);
  }
}

/** The PDF, or undefined where the fonts at hand lack a sign of it. */
function pdfOf(
  compiler: NodeCompiler,
  document: OpinionDocument,
  paper: Paper,
  plates: PicturesAtHand,
): Uint8Array | undefined {
  const { source, pictures } = opinionTypst(document, { paper, plates });
  for (const { path, svg } of pictures) compiler.mapShadow(shadowPath(path), Buffer.from(svg));
  const compiled = compiler.compile({ mainFileContent: source });
  if (compiled.hasError() || compiled.result === null) {
    const what = compiled
      .takeError()
      ?.shortDiagnostics.map((each) => String(each.message))
      .join('; ');
    throw new Error(`The opinion could not be set: ${what ?? 'the page could not be made'}.`);
  }
  try {
    return new Uint8Array(compiler.pdf(compiled.result, { pdfStandard: 'ua-1', creationTimestamp: 0 }));
  } catch (error) {
    if (/could not be displayed/.test(String(error))) return undefined;
    throw new Error(`The opinion could not be set as an accessible PDF: ${String(error)}`);
  }
}

function shadowPath(path: string): string {
  return resolve(nowhere, `.${path}`);
}

/** Works through a list with so many at once. */
async function inTurns<Item>(
  items: readonly Item[],
  at: number,
  work: (item: Item) => Promise<void>,
): Promise<void> {
  const waiting = items.values();
  await Promise.all(
    Array.from({ length: at }, async () => {
      for (const item of waiting) await work(item);
    }),
  );
}
