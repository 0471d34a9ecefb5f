import { readFile } from 'node:fs/promises';
import sharp, { type Sharp } from 'sharp';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import type { MediaType } from '../photo/file/sniffMediaType.ts';
import { decodeHeic, tooManyPixels } from './decodeHeic.ts';

/** A picture ready to be made smaller: upright, with its size and the EXIF block where one was found. */
export type Picture = { image: () => Sharp; widthPx: number; heightPx: number; exif: Uint8Array | undefined };

/** What is refused: a picture whose pixels would fill the memory. HEIC is decoded whole, so its limit is lower. */
export type PictureLimits = { mostPixels: number; mostHeicPixels: number; heicWorker: URL };

/** Opens a picture file of a known kind; reads its size before any pixel, so that a small file can't unfold without end. */
export async function openPicture(
  path: string,
  mediaType: MediaType,
  limits: PictureLimits,
): Promise<Outcome<Picture>> {
  return mediaType === 'image/heic' ? openHeic(path, limits) : openOther(path, mediaType, limits);
}

async function openOther(
  path: string,
  mediaType: MediaType,
  limits: PictureLimits,
): Promise<Outcome<Picture>> {
  const options = {
    limitInputPixels: limits.mostPixels,
    failOn: 'truncated',
    sequentialRead: true,
    pages: 1,
  } as const;
  try {
    const { autoOrient, width, height, exif } = await sharp(path, {
      ...options,
      limitInputPixels: false,
    }).metadata();
    if (width * height > limits.mostPixels) return tooManyPixels(limits.mostPixels);
    return done({
      image: () => sharp(path, options).autoOrient(),
      widthPx: autoOrient.width,
      heightPx: autoOrient.height,
      exif: mediaType === 'image/tiff' ? await readFile(path) : exif,
    });
  } catch {
    return brokenPicture();
  }
}

async function openHeic(path: string, limits: PictureLimits): Promise<Outcome<Picture>> {
  const bytes = await readFile(path);
  const decoded = await decodeHeic(limits.heicWorker, bytes, limits.mostHeicPixels);
  if (!decoded.ok) return decoded;
  const { width, height, pixels } = decoded.value;
  return done({
    image: () => sharp(pixels, { raw: { width, height, channels: 4 } }),
    widthPx: width,
    heightPx: height,
    exif: bytes,
  });
}

/** The fault for a file that begins like a picture and is none, or stops half-way. */
export function brokenPicture(): ReturnType<typeof refuse> {
  return refuse(
    'photo.broken',
    'The picture cannot be read: it is damaged or cut short. Send the original again.',
  );
}
