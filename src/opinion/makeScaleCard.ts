import { resolve } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { readFonts } from './pdf/fonts.ts';
import { type CardPaper, scaleCardTypst } from './scaleCardTypst.ts';

/** A folder that is never made: Typst has no file to read. */
const nowhere = resolve('/underside-scale-card-has-no-folder');

/**
 * The scale card as a PDF in true size (PDF/UA-1). The same paper gives the same bytes.
 *
 * @throws Error with a sentence where it can't be set
 */
export async function makeScaleCard(paper: CardPaper): Promise<Uint8Array> {
  const compiler = NodeCompiler.create({ workspace: nowhere, fontArgs: [{ fontBlobs: await readFonts() }] });
  const compiled = compiler.compile({ mainFileContent: scaleCardTypst(paper) });
  if (compiled.hasError() || compiled.result === null) {
    const said = compiled.takeError()?.shortDiagnostics.map((each) => String(each.message));
    throw new Error(`The scale card could not be set: ${said?.join('; ') ?? 'the page could not be made'}.`);
  }
  return new Uint8Array(compiler.pdf(compiled.result, { pdfStandard: 'ua-1', creationTimestamp: 0 }));
}
