import { open } from 'node:fs/promises';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import { sniffMediaType } from '../photo/file/sniffMediaType.ts';
import type { Picture } from '../photo/picture.ts';
import { brokenPicture, openPicture, type PictureLimits } from './openPicture.ts';

/**
 * A picture file whole and upright as plain pixels, for the calculations that look at one.
 *
 * @returns 8 bits a channel, red, green, blue; opacity is laid on white
 */
export async function readPixels(path: string, limits: PictureLimits): Promise<Outcome<Picture>> {
  const head = await headOf(path);
  if (head === undefined) return refuse('photo.not-there', `There is no picture ${path}: check its name.`);
  const mediaType = sniffMediaType(head);
  if (mediaType === undefined) {
    return refuse('photo.not-a-picture', `${path} is not a JPEG, PNG, WebP, TIFF or HEIC picture.`);
  }
  const opened = await openPicture(path, mediaType, limits);
  if (!opened.ok) return opened;
  try {
    const { data, info } = await opened.value
      .image()
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .raw({ depth: 'uchar' })
      .toBuffer({ resolveWithObject: true });
    const channels = info.channels === 1 ? 1 : info.channels === 4 ? 4 : 3;
    return done({ widthPx: info.width, heightPx: info.height, channels, pixels: data });
  } catch {
    return brokenPicture();
  }
}

async function headOf(path: string): Promise<Uint8Array | undefined> {
  try {
    const file = await open(path);
    try {
      const head = new Uint8Array(64);
      await file.read(head, 0, 64, 0);
      return head;
    } finally {
      await file.close();
    }
  } catch {
    return undefined;
  }
}
