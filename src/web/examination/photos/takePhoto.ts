import type { Belongs, HeldPhoto } from '../../offline/photos/heldPhoto.ts';
import type { PhotoKeeper, TakenIn } from '../../offline/photos/photoKeeper.ts';
import { sha256Hex } from '../../offline/photos/sha256Hex.ts';

/** A photo to take in, and where it belongs. */
export type PhotoJob = { file: File; piece: string; belongs: Belongs };

/**
 * Takes one photo in under its SHA-256: straight into the record, or kept on this device until the record answers.
 *
 * @param isAway  the record is known not to answer
 * @param tell    called with the share handed over, 0–1
 * @throws Error  with one plain sentence that can be shown as it stands
 */
export async function takePhoto(
  { file, piece, belongs }: PhotoJob,
  keeper: PhotoKeeper,
  isAway: boolean,
  tell: (share: number) => void,
): Promise<TakenIn> {
  const bytes = await readBytes(file);
  const sha256 = await sha256Hex(bytes, globalThis.crypto?.subtle);
  const photo = { sha256, name: file.name, type: file.type, piece, belongs };
  return keeper.takeIn(photo, new Blob([bytes], { type: file.type }), { isAway, tell });
}

/** A photo whose page was left before it could be entered, as it was chosen. */
export async function jobOf(photo: HeldPhoto, keeper: PhotoKeeper): Promise<PhotoJob | undefined> {
  const bytes = await keeper.bytesOf(photo.sha256);
  if (bytes === undefined) return undefined;
  const file = new File([bytes], photo.name, { type: photo.type });
  return { file, piece: photo.piece, belongs: photo.belongs };
}

async function readBytes(file: File): Promise<ArrayBuffer> {
  if (file.size === 0) throw new Error('The file is empty. Take or choose the photo again.');
  try {
    return await file.arrayBuffer();
  } catch {
    throw new Error('The file could not be read from this device. Choose it again.');
  }
}
