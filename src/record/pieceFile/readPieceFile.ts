import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, readFile, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { type Entry, openPromise, type ZipFile } from 'yauzl';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import {
  manifestName,
  mostBytesOf,
  mostManifestBytes,
  type PieceFileManifest,
  readPieceManifest,
} from './pieceFileManifest.ts';

/** A piece's file, unpacked and checked: every file is there, whole, by its hash. */
export type UnpackedPiece = { manifest: PieceFileManifest; folder: string };

/** A file of pictures does not grow when it is unpacked; text grows tenfold. More is a trap for the disk. */
const mostGrowth = 20;
const freeGrowth = 64_000_000;
const mostEntries = 20_001;

/**
 * Unpacks the file of a piece into an empty folder, trusting nothing in it: names, sizes and hashes are checked as it is
 * read, and nothing is written under a name that is not one of ours. On any fault the folder is removed.
 *
 * @param folder  made here; the caller removes it when done
 */
export async function readPieceFile(file: string, folder: string): Promise<Outcome<UnpackedPiece>> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  let unpacked: Outcome<UnpackedPiece>;
  try {
    unpacked = await unpack(file, folder);
  } catch (error) {
    unpacked = damaged(`it can’t be read as a zip (${(error as Error).message})`);
  }
  if (!unpacked.ok) await rm(folder, { recursive: true, force: true });
  return unpacked;
}

async function unpack(file: string, folder: string): Promise<Outcome<UnpackedPiece>> {
  const { size } = await stat(file);
  const zip = await openPromise(file, { strictFileNames: true });
  const found = new Map<string, { sha256: string; bytes: number }>();
  try {
    if (zip.entryCount > mostEntries) return damaged('it holds more files than a piece has');
    let left = size * mostGrowth + freeGrowth;
    for await (const entry of zip.eachEntry()) {
      const name = entry.fileName;
      const most = name === manifestName ? mostManifestBytes : mostBytesOf(name);
      if (most === undefined || entry.isEncrypted() || found.has(name))
        return damaged(`“${name.slice(0, 80)}” has no place in it`);
      if (entry.uncompressedSize > Math.min(most, left)) return damaged(`“${name}” is larger than it may be`);
      left -= entry.uncompressedSize;
      found.set(name, await unpackEntry(zip, entry, join(folder, name)));
    }
  } finally {
    zip.close();
  }
  const text = await readFile(join(folder, manifestName), 'utf8').catch(() => '');
  const manifest = readPieceManifest(text);
  if (manifest === undefined) return damaged('its list (manifest.json) is not there or was changed');
  found.delete(manifestName);
  for (const { path, sha256, bytes } of manifest.files) {
    const there = found.get(path);
    if (there?.sha256 !== sha256 || there.bytes !== bytes)
      return damaged(`“${path}” is not as it was taken out`);
    found.delete(path);
  }
  const [stray] = found.keys();
  if (stray !== undefined) return damaged(`“${stray}” is not in its list`);
  return done({ manifest, folder });
}

async function unpackEntry(
  zip: ZipFile,
  entry: Entry,
  to: string,
): Promise<{ sha256: string; bytes: number }> {
  await mkdir(dirname(to), { recursive: true, mode: 0o700 });
  const hash = createHash('sha256');
  let bytes = 0;
  const counting = new Transform({
    transform(chunk: Buffer, _encoding, next) {
      bytes += chunk.length;
      hash.update(chunk);
      next(bytes > entry.uncompressedSize ? new Error('larger than it says') : null, chunk);
    },
  });
  await pipeline(
    await zip.openReadStreamPromise(entry),
    counting,
    createWriteStream(to, { flags: 'wx', mode: 0o600 }),
  );
  return { sha256: hash.digest('hex'), bytes };
}

function damaged(what: string): ReturnType<typeof refuse> {
  return refuse(
    'piece-file.damaged',
    `This is no whole file of a piece: ${what}. Nothing was brought in. Take the piece out once more, and try that file.`,
    'file',
  );
}
