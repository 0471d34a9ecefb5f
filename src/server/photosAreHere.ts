import { done, type Outcome, refuse } from '../ground/fault.ts';
import { draftEvent, type Json } from '../piece/event.ts';
import { photosNamed } from '../piece/photosNamed.ts';
import type { PhotoFolder } from '../record/photos.ts';

/**
 * Whether every photo that acts bring into a piece was sent before them: an act is for good, and one that names a photo
 * nobody has would leave the record at fault for good. Photos that the piece names already are not asked for again.
 *
 * @param acts      as they came in; those that are none are left to the record to refuse
 * @param document  the piece as it stands
 */
export async function photosAreHere(
  acts: readonly unknown[],
  document: Json | undefined,
  photos: PhotoFolder,
): Promise<Outcome<undefined>> {
  const known = new Set(photosNamed({ changes: [{ path: [], to: document ?? null }] }));
  for (const [index, act] of acts.entries()) {
    const read = draftEvent.safeParse(act);
    if (!read.success) continue;
    for (const sha of photosNamed(read.data))
      if (!known.has(sha) && (await photos.original(sha)) === undefined)
        return refuse(
          'record.photo-not-here',
          'The photo that this entry names has not come in: send the photo first, then enter it.',
          `events.${index}.changes`,
        );
  }
  return done(undefined);
}
