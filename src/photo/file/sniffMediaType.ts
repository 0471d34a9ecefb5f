import type { Photo } from '../../piece/photo.ts';

/** The kinds of picture that come in. */
export type MediaType = Photo['mediaType'];

const heicBrands = new Set(['heic', 'heix', 'hevc', 'hevx', 'mif1', 'msf1']);

/**
 * What kind of picture a file is, by its first bytes and never by its name, or undefined for any other file.
 *
 * @param head    the first 32 bytes or more
 * @source        the signatures of JPEG (ITU-T T.81), PNG (ISO/IEC 15948), WebP (RFC 9649), TIFF 6.0, HEIF (ISO/IEC 23008-12)
 */
export function sniffMediaType(head: Uint8Array): MediaType | undefined {
  const text = String.fromCharCode(...head.subarray(0, 32));
  if (text.startsWith('\xff\xd8\xff')) return 'image/jpeg';
  if (text.startsWith('\x89PNG\r\n\x1a\n')) return 'image/png';
  if (text.startsWith('RIFF') && text.slice(8, 12) === 'WEBP') return 'image/webp';
  if (text.startsWith('II*\0') || text.startsWith('MM\0*')) return 'image/tiff';
  if (text.slice(4, 8) === 'ftyp') return isHeic(text) ? 'image/heic' : undefined;
  return undefined;
}

/** The first brand decides; the general brand mif1 is shared with other codings, so it must not name AVIF beside it. */
function isHeic(text: string): boolean {
  return heicBrands.has(text.slice(8, 12)) && !text.includes('avif');
}
