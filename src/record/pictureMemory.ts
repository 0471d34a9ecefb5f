import sharp from 'sharp';
import type { MediaType } from '../photo/file/sniffMediaType.ts';

/** Pictures that hold more than this at once are opened one at a time. */
export const largePictureBytes = 100_000_000;

/**
 * How many bytes of a picture are held at once while it is made smaller. A plain JPEG or PNG is read line by line; one that
 * is stored in passes (progressive, interlaced), and every WebP, TIFF or HEIC, is unpacked whole.
 *
 * @returns Infinity where it can't be told before it is opened
 */
export async function pictureMemory(path: string, mediaType: MediaType): Promise<number> {
  if (mediaType === 'image/heic') return Number.POSITIVE_INFINITY;
  try {
    const found = await sharp(path, { limitInputPixels: false }).metadata();
    const isByLine = mediaType === 'image/jpeg' || mediaType === 'image/png';
    if (isByLine && found.isProgressive !== true) return 0;
    const bytesOfSample = mediaType === 'image/jpeg' || found.depth !== 'uchar' ? 2 : 1;
    return found.width * found.height * found.channels * bytesOfSample;
  } catch {
    return 0;
  }
}
