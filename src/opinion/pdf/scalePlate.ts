import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import sharp, { type Metadata } from 'sharp';

/** The picture of a plate: its bytes, or where they are and the SHA-256 they have to come to. */
export type PlateFile = { id: string; mediaType: string } & (
  | { bytes: Uint8Array }
  | { path: string; sha256?: string }
);

/** A plate ready to print: upright, as wide and high as it is. */
export type ScaledPlate = { jpeg: Buffer; widthPx: number; heightPx: number };

/** Long side of a printed plate in pixels: 162 mm at about 280 to the inch; and how long one may be to be taken as it is. */
const longSidePx = 1800;
const longEnoughPx = 2048;
const mostPixels = 150_000_000;

/**
 * All pictures at print size, by id; those that can't be read are left out. They are begun at once, so that they are
 * worked on beside whatever else this thread does: the image library takes as many at a time as the machine allows.
 *
 * @param onDone  told how many are behind
 */
export async function scalePlates(
  files: readonly PlateFile[],
  onDone: (done: number) => void = () => {},
): Promise<Map<string, ScaledPlate>> {
  let done = 0;
  const scaled = await Promise.all(
    files.map(async (file) => {
      const plate = await scalePlate(file);
      done += 1;
      onDone(done);
      return [file.id, plate] as const;
    }),
  );
  return new Map(scaled.flatMap(([id, plate]) => (plate === undefined ? [] : [[id, plate] as const])));
}

/**
 * A plate's picture at print size as JPEG, upright, with nothing left of what the camera wrote. A JPEG that is all that
 * already, as the record's own derived pictures are, is taken as it is.
 *
 * @returns undefined where the file is not there or is no picture
 * @throws Error with a sentence where its bytes do not come to the hash that was handed in with it
 */
export async function scalePlate(file: PlateFile): Promise<ScaledPlate | undefined> {
  const source = await sourceOf(file);
  try {
    const picture = sharp(source, { limitInputPixels: mostPixels, failOn: 'none' });
    const told = await picture.metadata();
    if (isPrintable(told)) {
      const jpeg = typeof source === 'string' ? await readFile(source) : source;
      return { jpeg, widthPx: told.width, heightPx: told.height };
    }
    const { data, info } = await picture
      .rotate()
      .resize(longSidePx, longSidePx, { fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .jpeg({ quality: 82, chromaSubsampling: '4:2:0' })
      .toBuffer({ resolveWithObject: true });
    return { jpeg: data, widthPx: info.width, heightPx: info.height };
  } catch {
    return undefined;
  }
}

/** What is printed is exactly what was checked: bytes that have a hash are read once, and printed as they were read. */
async function sourceOf(file: PlateFile): Promise<Buffer | string> {
  if ('bytes' in file) return Buffer.from(file.bytes);
  if (file.sha256 === undefined) return file.path;
  const bytes = await readFile(file.path).catch(() => Buffer.alloc(0));
  if (createHash('sha256').update(bytes).digest('hex') !== file.sha256)
    throw new Error(
      'A picture was changed on the disk while it was being printed, so nothing was printed: try again.',
    );
  return bytes;
}

/** Small enough, upright, in the colours of a screen, and with nothing written into it. */
function isPrintable({
  format,
  width,
  height,
  orientation,
  space,
  exif,
  xmp,
  iptc,
  comments,
}: Metadata): boolean {
  const plain = format === 'jpeg' && space === 'srgb' && (orientation ?? 1) === 1;
  const silent =
    exif === undefined && xmp === undefined && iptc === undefined && (comments ?? []).length === 0;
  return plain && silent && Math.max(width, height) <= longEnoughPx;
}
