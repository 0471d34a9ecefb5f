import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import sharp from 'sharp';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import { readCameraNote } from '../photo/file/readCameraNote.ts';
import type { MediaType } from '../photo/file/sniffMediaType.ts';
import type { Photo } from '../piece/photo.ts';
import { brokenPicture, openPicture, type PictureLimits } from './openPicture.ts';
import { type photoPaths, shownSizes } from './photoPaths.ts';

/** What is known of a photo from its bytes alone. */
export type PhotoFacts = Pick<
  Photo,
  'sha256' | 'mediaType' | 'bytes' | 'widthPx' | 'heightPx' | 'takenAt' | 'camera'
> & { note: string };

/**
 * Reads a picture through and keeps the two sizes it is shown in, and its facts, beside the record. All of it can be
 * made again from the original at any time. Reading it through is also what shows a cut or damaged file.
 *
 * @param path  the original's bytes
 * @returns the facts, and the SHA-256 of the larger picture
 */
export async function makeDerived(
  path: string,
  known: { sha256: string; bytes: number; mediaType: MediaType },
  paths: ReturnType<typeof photoPaths>,
  limits: PictureLimits,
): Promise<Outcome<{ facts: PhotoFacts; viewSha256: string }>> {
  const opened = await openPicture(path, known.mediaType, limits);
  if (!opened.ok) return opened;
  const { image, widthPx, heightPx, exif } = opened.value;
  try {
    const view = await image()
      .resize(shownSizes.view, shownSizes.view, { fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .jpeg({ quality: 84 })
      .toBuffer();
    const thumb = await sharp(view)
      .resize(shownSizes.thumb, shownSizes.thumb, { fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 78 })
      .toBuffer();
    const facts: PhotoFacts = { ...known, widthPx, heightPx, ...readCameraNote(exif) };
    await writeWhole(paths.shown(known.sha256, 'view'), view);
    await writeWhole(paths.shown(known.sha256, 'thumb'), thumb);
    await writeWhole(paths.facts(known.sha256), JSON.stringify(facts));
    return done({ facts, viewSha256: createHash('sha256').update(view).digest('hex') });
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOSPC')
      return refuse('photo.disk-full', 'The disk is full: the photo was not kept.');
    return brokenPicture();
  }
}

/** The facts as they were kept, or undefined when they must be read again. */
export async function readFacts(
  sha256: string,
  paths: ReturnType<typeof photoPaths>,
): Promise<PhotoFacts | undefined> {
  try {
    return JSON.parse(await readFile(paths.facts(sha256), 'utf8'));
  } catch {
    return undefined;
  }
}

async function writeWhole(path: string, bytes: Uint8Array | string): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const waiting = `${path}.${randomUUID()}.new`;
  const file = await open(waiting, 'w');
  try {
    await file.writeFile(bytes);
  } catch (error) {
    await rm(waiting, { force: true });
    throw error;
  } finally {
    await file.close();
  }
  await rename(waiting, path);
}
