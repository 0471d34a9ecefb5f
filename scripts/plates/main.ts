import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { type DrawnPlate, plateList } from './plateList.ts';
import { drawScene } from './render/drawScene.ts';

const across = 1600;
const high = 1200;

/**
 * Draws the plates of the worked examples: pictures of pieces that do not exist, the same bytes every time.
 *
 * @param outDir  the folder of the built examples; each example's plates go into its own folder there
 * @param only    draws only the files whose name holds this
 */
export async function drawPlates(outDir: string, only = ''): Promise<void> {
  for (const plate of plateList.filter(({ example, file }) => `${example}/${file}`.includes(only))) {
    await mkdir(join(outDir, plate.example), { recursive: true });
    await writeFile(join(outDir, plate.example, plate.file), await platePicture(plate));
  }
}

/** One plate as JPEG. */
export function platePicture({ scene }: DrawnPlate, width = across, height = high): Promise<Buffer> {
  const raw = { width, height, channels: 3 } as const;
  return sharp(drawScene(scene(), width, height), { raw })
    .jpeg({ quality: 86, chromaSubsampling: '4:4:4' })
    .toBuffer();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [outDir, only] = process.argv.slice(2);
  if (outDir === undefined) {
    console.error('Say where the plates go: npx tsx scripts/plates/main.ts FOLDER');
    process.exitCode = 2;
  } else await drawPlates(outDir, only);
}
