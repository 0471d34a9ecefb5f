import sharp from 'sharp';
import type { DrawnPlate } from './plateList.ts';
import { drawScene } from './render/drawScene.ts';

/** One plate as JPEG. */
export function platePicture(
  { scene, mirrored = false }: DrawnPlate,
  width = 1600,
  height = 1200,
): Promise<Buffer> {
  const raw = { width, height, channels: 3 } as const;
  return sharp(drawScene(scene(), width, height), { raw })
    .flop(mirrored)
    .jpeg({ quality: 86, chromaSubsampling: '4:4:4' })
    .toBuffer();
}
