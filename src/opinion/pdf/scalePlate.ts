import sharp from 'sharp';

/** The picture of a plate: its bytes, or where they are. */
export type PlateFile = { id: string; mediaType: string } & ({ bytes: Uint8Array } | { path: string });

/** A plate ready to print: upright, as wide and high as it is. */
export type ScaledPlate = { jpeg: Buffer; widthPx: number; heightPx: number };

/** Long side of a printed plate in pixels: 162 mm at about 280 to the inch. */
const longSidePx = 1800;
const mostPixels = 150_000_000;

/**
 * A plate's picture at print size as JPEG, upright, with nothing left of what the camera wrote.
 *
 * @returns undefined where the file is not there or is no picture
 */
export async function scalePlate(file: PlateFile): Promise<ScaledPlate | undefined> {
  const source = 'bytes' in file ? Buffer.from(file.bytes) : file.path;
  try {
    const { data, info } = await sharp(source, { limitInputPixels: mostPixels, failOn: 'none' })
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
