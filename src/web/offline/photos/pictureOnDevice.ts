import { readCameraNote } from '../../../photo/file/readCameraNote.ts';
import { sniffMediaType } from '../../../photo/file/sniffMediaType.ts';
import type { PhotoFacts } from './heldPhoto.ts';

/** A picture as this device could open it: what is known of it, and the two sizes it is shown in. */
export type PictureHere = { facts: PhotoFacts; view: Blob; thumb: Blob };

/** The sizes the record makes too, by their longest side in pixels. */
const sizes = { view: { longestPx: 2048, quality: 0.84 }, thumb: { longestPx: 320, quality: 0.78 } };

/**
 * Opens a picture with what the browser has: for the time until the record has it.
 *
 * @returns undefined where this browser can't open its kind (TIFF, on many HEIC)
 */
export async function pictureOnDevice(sha256: string, blob: Blob): Promise<PictureHere | undefined> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const mediaType = sniffMediaType(bytes);
  if (mediaType === undefined) return undefined;
  const opened = await createImageBitmap(blob).catch(() => undefined);
  if (opened === undefined) return undefined;
  try {
    const { width: widthPx, height: heightPx } = opened;
    const [view, thumb] = [await scaled(opened, sizes.view), await scaled(opened, sizes.thumb)];
    const { note: _unsaid, ...camera } = readCameraNote(bytes);
    return { facts: { sha256, mediaType, bytes: blob.size, widthPx, heightPx, ...camera }, view, thumb };
  } finally {
    opened.close();
  }
}

async function scaled(
  picture: ImageBitmap,
  { longestPx, quality }: { longestPx: number; quality: number },
): Promise<Blob> {
  const share = Math.min(1, longestPx / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(picture.width * share)),
    Math.max(1, Math.round(picture.height * share)),
  );
  const drawing = canvas.getContext('2d');
  if (drawing === null) throw new Error('This browser draws no pictures.');
  drawing.fillStyle = '#ffffff';
  drawing.fillRect(0, 0, canvas.width, canvas.height);
  drawing.imageSmoothingQuality = 'high';
  drawing.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas.convertToBlob({ type: 'image/jpeg', quality });
}
