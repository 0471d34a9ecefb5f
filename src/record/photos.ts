import { randomUUID } from 'node:crypto';
import { copyFile, mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import { sniffMediaType } from '../photo/file/sniffMediaType.ts';
import type { BuiltInPhoto } from './builtInPhoto.ts';
import { makeDerived, type PhotoFacts, readFacts } from './makeDerived.ts';
import type { PictureLimits } from './openPicture.ts';
import { photoPaths, type ShownSize } from './photoPaths.ts';
import { largePictureBytes, pictureMemory } from './pictureMemory.ts';
import { type PrintablePicture, printablePictures } from './printablePictures.ts';
import { receiveFile } from './receiveFile.ts';
import { type InTurn, takingTurns } from './turns.ts';

/** The largest file and the largest picture that come in. */
export const photoLimits = { mostBytes: 200_000_000, mostPixels: 150_000_000, mostHeicPixels: 64_000_000 };

/** The photos of a record, each under the SHA-256 of its bytes. */
export type PhotoFolder = {
  /** Takes a photo in: nothing is kept unless all of it is a picture and its hash is the one announced. */
  put(sha256: string, source: AsyncIterable<Uint8Array>): Promise<Outcome<PhotoFacts>>;
  /** The original bytes, as they came. */
  original(sha256: string): Promise<BuiltInPhoto | undefined>;
  /** A JPEG of it, made again if it is not there. */
  shown(sha256: string, size: ShownSize): Promise<string | undefined>;
  /** A picture to print, which is what it is by its hash and not by its name; undefined where there is no such photo. */
  printable(sha256: string): Promise<Outcome<PrintablePicture | undefined>>;
  /** Keeps a photo that comes with the program as one of the record's own. */
  adopt(sha256: string): Promise<Outcome<undefined>>;
};

/** What a photo folder may be given beside its place. */
export type PhotoParts = {
  /** Photos of the worked examples; they are shown like the others and are not part of the record. */
  builtIn?: ReadonlyMap<string, BuiltInPhoto>;
  /** The line in which large pictures wait, one at a time, with whatever else is heavy. */
  heavy?: InTurn;
  /** Where derived pictures are kept, where the data folder is only looked at. */
  workDir?: string;
};

/**
 * The photo folder of a record.
 *
 * @param dir  the data folder
 */
export async function openPhotos(
  dir: string,
  limits: PictureLimits & { mostBytes: number; largeBytes?: number },
  { builtIn = new Map(), heavy = takingTurns(1), workDir = dir }: PhotoParts = {},
): Promise<PhotoFolder> {
  const paths = photoPaths(dir, workDir);
  const light = takingTurns(2);
  const derive = async (path: string, known: Parameters<typeof makeDerived>[1]) => {
    const inTurn =
      (await pictureMemory(path, known.mediaType)) > (limits.largeBytes ?? largePictureBytes) ? heavy : light;
    return inTurn(() => makeDerived(path, known, paths, limits));
  };
  await rm(paths.incoming, { recursive: true, force: true });
  const ours = [paths.derived, paths.incoming, ...(workDir === dir ? [paths.originals] : [])];
  for (const folder of ours) await mkdir(folder, { recursive: true });

  const original = async (sha256: string): Promise<BuiltInPhoto | undefined> => {
    const path = paths.original(sha256);
    const head = await readHead(path);
    const mediaType = head && sniffMediaType(head);
    return mediaType ? { path, mediaType } : builtIn.get(sha256);
  };

  const shown = async (sha256: string, size: ShownSize): Promise<string | undefined> => {
    const path = paths.shown(sha256, size);
    if (await isThere(path)) return path;
    const kept = await original(sha256);
    if (kept === undefined) return undefined;
    return (await makeView(sha256, kept)).ok ? path : undefined;
  };
  const makeView = async (sha256: string, { path, mediaType }: BuiltInPhoto): Promise<Outcome<string>> => {
    const { size: bytes } = await stat(path);
    const made = await derive(path, { sha256, bytes, mediaType });
    return made.ok ? done(made.value.viewSha256) : made;
  };
  const pictures = printablePictures({
    original,
    makeView,
    viewPath: (sha256) => paths.shown(sha256, 'view'),
  });

  const put = async (sha256: string, source: AsyncIterable<Uint8Array>): Promise<Outcome<PhotoFacts>> => {
    const waiting = join(paths.incoming, randomUUID());
    const received = await receiveFile(source, waiting, limits.mostBytes);
    if (!received.ok) return received;
    try {
      const { bytes, head } = received.value;
      if (received.value.sha256 !== sha256) {
        return refuse(
          'photo.other-bytes',
          'The photo did not arrive as it was sent (its SHA-256 differs): send it again.',
          'sha256',
        );
      }
      const mediaType = sniffMediaType(head);
      if (mediaType === undefined) {
        return refuse(
          'photo.not-a-photo',
          'This file is not a photo: JPEG, PNG, WebP, TIFF and HEIC come in.',
        );
      }
      const known = (await isThere(paths.original(sha256))) ? await readFacts(sha256, paths) : undefined;
      if (known !== undefined) return done(known);
      const made = await derive(waiting, { sha256, bytes, mediaType });
      if (!made.ok) return made;
      await keep(waiting, paths.original(sha256));
      pictures.wasMade(sha256, made.value.viewSha256);
      return done(made.value.facts);
    } finally {
      await rm(waiting, { force: true });
    }
  };

  const adopt = async (sha256: string): Promise<Outcome<undefined>> => {
    if (await isThere(paths.original(sha256))) return done(undefined);
    const one = builtIn.get(sha256);
    if (one === undefined)
      return refuse(
        'photo.missing',
        'A photo of this piece is not there: start the program again to make the examples anew.',
      );
    const waiting = join(paths.incoming, randomUUID());
    await copyFile(one.path, waiting);
    await keep(waiting, paths.original(sha256));
    return done(undefined);
  };

  return { put, original, shown, adopt, printable: pictures.printable };
}

/** Moves a whole file into its place, and makes the place outlive a loss of power. */
async function keep(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  const file = await open(from, 'r+');
  await file.sync();
  await file.close();
  await rename(from, to);
  if (process.platform === 'win32') return;
  const folder = await open(dirname(to), 'r');
  await folder.sync();
  await folder.close();
}

async function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

async function readHead(path: string): Promise<Uint8Array | undefined> {
  const file = await open(path, 'r').catch(() => undefined);
  if (file === undefined) return undefined;
  const head = Buffer.alloc(64);
  await file.read(head, 0, 64, 0).finally(() => file.close());
  return head;
}

/** Every file kept as an original, by the name it has: for checking the record. */
export async function originalFiles(dir: string): Promise<{ name: string; path: string }[]> {
  const { originals } = photoPaths(dir);
  const names = await readdir(originals, { recursive: true }).catch(() => []);
  const files = await Promise.all(
    names.map(async (name) => ({
      path: join(originals, name),
      isFile: (await stat(join(originals, name))).isFile(),
    })),
  );
  return files.filter((one) => one.isFile).map(({ path }) => ({ name: basename(path), path }));
}
