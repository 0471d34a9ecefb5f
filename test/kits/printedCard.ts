import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import sharp from 'sharp';
import { makeScaleCard } from '../../src/opinion/makeScaleCard.ts';
import { readFonts } from '../../src/opinion/pdf/fonts.ts';
import { type CardPaper, cardOrigin, scaleCardTypst } from '../../src/opinion/scaleCardTypst.ts';

/** A printed page: colours row by row, and where a place of the card, in mm, lies on it in pixels. */
export type PrintedCard = {
  widthPx: number;
  heightPx: number;
  rgb: Buffer;
  perMm: number;
  at: (xMm: number, yMm: number) => [number, number];
  by: string;
};

/**
 * The scale card as a printer would lay it down: the PDF through poppler's pdftoppm where the machine has it, else the same page
 * through the compiler's own SVG.
 */
export async function printedCard(paper: CardPaper, dpi: number): Promise<PrintedCard> {
  const { picture, by } = await rasterOf(paper, dpi);
  const { data, info } = await sharp(picture, by === 'svg' ? { density: dpi, limitInputPixels: false } : {})
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const perMm = dpi / 25.4;
  const [left, top] = cardOrigin(paper);
  return {
    widthPx: info.width,
    heightPx: info.height,
    rgb: data,
    perMm,
    at: (xMm, yMm) => [(xMm + left) * perMm - 0.5, (yMm + top) * perMm - 0.5],
    by,
  };
}

async function rasterOf(paper: CardPaper, dpi: number): Promise<{ picture: Buffer; by: string }> {
  const folder = await mkdtemp(join(tmpdir(), 'underside-card-'));
  const file = join(folder, 'card.pdf');
  await writeFile(file, await makeScaleCard(paper));
  try {
    const asked = ['-r', String(dpi), '-png', '-singlefile', file, join(folder, 'card')];
    await promisify(execFile)('pdftoppm', asked);
    return { picture: await sharp(join(folder, 'card.png')).png().toBuffer(), by: 'pdftoppm' };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    const compiler = NodeCompiler.create({ fontArgs: [{ fontBlobs: await readFonts() }] });
    return { picture: Buffer.from(compiler.svg({ mainFileContent: scaleCardTypst(paper) })), by: 'svg' };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
