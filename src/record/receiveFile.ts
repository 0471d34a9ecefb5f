import { createHash } from 'node:crypto';
import { open, unlink } from 'node:fs/promises';
import { done, type Outcome, refuse } from '../ground/fault.ts';

/** A file that came in whole: where it waits, its hash, size and first bytes. */
export type Received = { path: string; sha256: string; bytes: number; head: Uint8Array };

/**
 * Writes a stream to a file while hashing it, and flushes it to the disk. On any fault nothing is left behind.
 *
 * @param source     the bytes as they come
 * @param path       a file that must not be there yet
 * @param mostBytes  more than this is refused as soon as it is passed
 */
export async function receiveFile(
  source: AsyncIterable<Uint8Array>,
  path: string,
  mostBytes: number,
): Promise<Outcome<Received>> {
  const hash = createHash('sha256');
  const file = await open(path, 'wx');
  let outcome: Outcome<Received> | undefined;
  try {
    let bytes = 0;
    let head = Buffer.alloc(0);
    for await (const chunk of source) {
      bytes += chunk.byteLength;
      if (bytes > mostBytes) {
        outcome = refuse(
          'photo.too-large',
          `The file is larger than ${Math.floor(mostBytes / 1e6)} MB: hand in a smaller picture.`,
        );
        break;
      }
      if (head.length < 64) head = Buffer.concat([head, chunk]).subarray(0, 64);
      hash.update(chunk);
      await file.writeFile(chunk);
    }
    if (outcome === undefined) {
      await file.sync();
      outcome = done({ path, sha256: hash.digest('hex'), bytes, head });
    }
  } catch (error) {
    outcome = receiveFault(error);
  } finally {
    await file.close();
  }
  if (!outcome.ok) await unlink(path);
  return outcome;
}

function receiveFault(error: unknown): ReturnType<typeof refuse> {
  const code = (error as { code?: string }).code;
  if (code === 'ENOSPC')
    return refuse(
      'photo.disk-full',
      'The disk is full: the photo was not kept. Free some space and send it again.',
    );
  return refuse('photo.cut-off', 'The photo stopped half-way: send it again.');
}
