import { resolve } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import type { FieldGuide } from './fieldGuide.ts';
import { fieldGuideTypst } from './fieldGuideTypst.ts';
import { readFonts } from './pdf/fonts.ts';
import { settable } from './pdf/settable.ts';

/** A folder that is never made: Typst has no file to read but the drawings handed to it. */
const nowhere = resolve('/underside-field-guide-has-no-folder');

/**
 * A field guide as a tagged PDF (PDF/UA-1). The same guide gives the same bytes.
 *
 * Signs that the faces lack, in an entry of the user's own, are printed by their code point.
 *
 * @throws Error with a sentence where it can't be set
 */
export async function makeFieldGuide(guide: FieldGuide): Promise<Uint8Array> {
  const fonts = await readFonts();
  const { source, pictures } = fieldGuideTypst(settable(guide, fonts));
  const compiler = NodeCompiler.create({ workspace: nowhere, fontArgs: [{ fontBlobs: fonts }] });
  for (const { path, svg } of pictures) compiler.mapShadow(resolve(nowhere, `.${path}`), Buffer.from(svg));
  try {
    const compiled = compiler.compile({ mainFileContent: source });
    if (compiled.hasError() || compiled.result === null) {
      const said = compiled.takeError()?.shortDiagnostics.map((each) => String(each.message));
      throw new Error(
        `The field guide could not be set: ${said?.join('; ') ?? 'the pages could not be made'}.`,
      );
    }
    return new Uint8Array(compiler.pdf(compiled.result, { pdfStandard: 'ua-1', creationTimestamp: 0 }));
  } finally {
    compiler.resetShadow();
    compiler.evictCache(0);
  }
}
