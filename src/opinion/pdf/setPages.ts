import { resolve } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { type OpinionDocument, platesIn } from '../opinionDocument.ts';
import { opinionTypst } from '../opinionTypst.ts';
import type { Paper } from '../typst/plateLayout.ts';
import { platePath } from '../typst/typstPlate.ts';
import { readFonts } from './fonts.ts';
import type { ScaledPlate } from './scalePlate.ts';
import { settable } from './settable.ts';

/** The pictures at hand, ready to print, by photo id. */
export type ScaledPlates = ReadonlyMap<string, ScaledPlate>;

/** A folder that is never made: Typst has no file to read but those handed to it. */
const nowhere = resolve('/underside-opinion-has-no-folder');

/**
 * Sets a document and its pictures as a tagged PDF (PDF/UA-1). The same input gives the same bytes.
 *
 * First with whatever fonts the machine has for signs that ours lack; where one is in none, once more with such signs
 * written by their code point.
 *
 * @throws Error with a sentence where the document can't be set at all
 */
export async function setPages(
  document: OpinionDocument,
  plates: ScaledPlates,
  paper: Paper,
): Promise<Uint8Array> {
  const fonts = await readFonts();
  const compiler = NodeCompiler.create({ workspace: nowhere, fontArgs: [{ fontBlobs: fonts }] });
  for (const plate of platesIn(document)) {
    const scaled = plates.get(plate.photoId);
    if (scaled !== undefined) compiler.mapShadow(shadowPath(platePath(plate)), scaled.jpeg);
  }
  try {
    const pdf =
      pdfOf(compiler, document, paper, plates) ?? pdfOf(compiler, settable(document, fonts), paper, plates);
    if (pdf !== undefined) return pdf;
  } finally {
    compiler.resetShadow();
    compiler.evictCache(0);
  }
  throw new Error(
    'The opinion could not be set: a sign in it can’t be printed. Look for odd signs in the last words entered.',
  );
}

/** The PDF, or undefined where the fonts at hand lack a sign of it. */
function pdfOf(
  compiler: NodeCompiler,
  document: OpinionDocument,
  paper: Paper,
  plates: ScaledPlates,
): Uint8Array | undefined {
  const { source, pictures } = opinionTypst(document, { paper, plates });
  for (const { path, svg } of pictures) compiler.mapShadow(shadowPath(path), Buffer.from(svg));
  const compiled = compiler.compile({ mainFileContent: source });
  if (compiled.hasError() || compiled.result === null) {
    const said = compiled.takeError()?.shortDiagnostics.map((each) => String(each.message));
    throw new Error(`The opinion could not be set: ${said?.join('; ') ?? 'the pages could not be made'}.`);
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
