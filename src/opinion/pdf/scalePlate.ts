import sharp from 'sharp';

/** The picture of a plate: its bytes, or where they are. */
export type PlateFile = { id: string; mediaType: string } & ({ bytes: Uint8Array } | { path: string });

/** A plate ready to print: upright, as wide and high as it is. */
export type ScaledPlate = { jpeg: Buffer; widthPx: number; heightPx: number };

/** Long side of a printed plate in pixels: 162 mm at about 280 to the inch. */
const longSidePx = 1800;
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
