import { createHash, randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';

/** What a file's bytes are: SHA-256 in hex, and how many. */
export type FileFacts = { sha256: string; bytes: number };

/** The hash and size of a file, read from the disk. */
export async function factsOf(path: string): Promise<FileFacts> {
  const hash = createHash('sha256');
  let bytes = 0;
  for await (const chunk of createReadStream(path)) {
    hash.update(chunk);
    bytes += chunk.length;
  }
  return { sha256: hash.digest('hex'), bytes };
}

/**
 * Copies a file so that a reader never sees half of it and a loss of power does not undo it.
 *
 * @returns what was copied, hashed on the way
 */
export async function copyDurably(from: string, to: string): Promise<FileFacts> {
  const hash = createHash('sha256');
  let bytes = 0;
  await becomeDurably(to, async (write) => {
    for await (const chunk of createReadStream(from)) {
      hash.update(chunk);
      bytes += chunk.length;
      await write(chunk);
    }
  });
  return { sha256: hash.digest('hex'), bytes };
}

/** Writes a text as a file, whole and flushed, or leaves what was there. */
export async function writeDurably(to: string, text: string): Promise<void> {
  await becomeDurably(to, (write) => write(Buffer.from(text)));
}

async function becomeDurably(
  to: string,
  fill: (write: (chunk: Uint8Array) => Promise<void>) => Promise<void>,
): Promise<void> {
  await mkdir(dirname(to), { recursive: true, mode: 0o700 });
  const waiting = `${to}.${randomUUID()}.unfinished`;
  try {
    const file = await open(waiting, 'wx', 0o600);
    try {
      await fill((chunk) => file.writeFile(chunk));
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(waiting, to);
  } catch (error) {
    await rm(waiting, { force: true });
    throw error;
  }
  await syncFolder(dirname(to));
}

/** Flushes a file that another library wrote. */
export async function syncFile(path: string): Promise<void> {
  const file = await open(path, 'r+');
  await file.sync().finally(() => file.close());
}

/** Flushes the names in a folder; Windows has no such thing. */
export async function syncFolder(path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  await folder.sync().finally(() => folder.close());
}
