/** Draws the pictures that the examples of calculations name: `npx tsx scripts/examplePictures.ts`. Rendered, seeded, invented. */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { renderMarks } from '../test/kits/surfaces/renderMarks.ts';
import { drawerSide } from './drawnPictures.ts';

const folder = fileURLToPath(new URL('../examples/pictures/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const [name, picture] of Object.entries({
  'drawer-side': drawerSide(),
  'sawn-board': renderMarks('circular-saw', 31).picture,
})) {
  const { widthPx: width, heightPx: height, channels, pixels } = picture;
  await sharp(pixels, { raw: { width, height, channels } })
    .png({ compressionLevel: 9 })
    .toFile(`${folder}${name}.png`);
}
