/** Draws examples/pictures/grain-cuff.png, the rendered board under a cuff that the examples of photo.grain and photo.grain-match name. */
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { grainScene } from '../../test/kits/surfaces/grainPairs.ts';
import { renderScene } from '../../test/kits/surfaces/scene.ts';

const scene = grainScene('straight', true, 26);
const { picture } = renderScene({
  ...scene,
  widthMm: 70,
  upperMm: 55,
  bandMm: 15,
  lowerMm: 50,
  band: 'cross-grain',
  camera: { ...scene.camera, pxPerMm: 4, turnDeg: 0.8, perspective: 0 },
});
await sharp(picture.pixels, { raw: { width: picture.widthPx, height: picture.heightPx, channels: 3 } })
  .png({ compressionLevel: 9, palette: true })
  .toFile(fileURLToPath(new URL('../../examples/pictures/grain-cuff.png', import.meta.url)));
