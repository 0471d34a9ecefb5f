import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import type { BuiltInPhoto } from './builtInPhoto.ts';

/** A picture to be printed: where it lies, and the SHA-256 that its bytes have to have when they are read. */
export type PrintablePicture = BuiltInPhoto & { sha256: string };

type Parts = {
  original: (sha256: string) => Promise<BuiltInPhoto | undefined>;
  /** Makes the view from an original's bytes; answers the hash of the view. */
  makeView: (sha256: string, original: BuiltInPhoto) => Promise<Outcome<string>>;
  viewPath: (sha256: string) => string;
};

/**
 * Pictures to print. A view that lies on the disk is never believed for its name: the first time in a run of the program it is
 * made anew from the original, whose bytes must come to the photo's hash, and later its bytes are held against what was made then.
 */
export function printablePictures({ original, makeView, viewPath }: Parts) {
  /** The hash of the view made in this run, by the photo's. */
  const made = new Map<string, string>();
  return {
    /** A view was made from bytes that came to the photo's hash. */
    wasMade: (sha256: string, viewSha256: string) => void made.set(sha256, viewSha256),
    /** @returns undefined where there is no such photo; a fault where its original is not as it was taken in */
    async printable(sha256: string): Promise<Outcome<PrintablePicture | undefined>> {
      const kept = await original(sha256);
      if (kept === undefined) return done(undefined);
      const path = viewPath(sha256);
      const known = made.get(sha256);
      if (known !== undefined && (await hashOf(path)) === known)
        return done({ path, mediaType: 'image/jpeg', sha256: known });
      if ((await hashOf(kept.path)) !== sha256)
        return refuse('photo.changed', 'The photo is not as it was taken in: its bytes differ.', 'sha256');
      const view = await makeView(sha256, kept);
      if (!view.ok) return done({ ...kept, sha256 });
      made.set(sha256, view.value);
      return done({ path, mediaType: 'image/jpeg', sha256: view.value });
    },
  };
}

/** SHA-256 of a file in hex; empty where it can't be read. */
async function hashOf(path: string): Promise<string> {
  const hash = createHash('sha256');
  try {
    for await (const chunk of createReadStream(path)) hash.update(chunk);
    return hash.digest('hex');
  } catch {
    return '';
  }
}
