import { deviceFiles } from '../photos/deviceFiles.ts';
import type { PhotoSize } from './routeOf.ts';

/**
 * A photo: from the device where it is there, else from the server. The sizes that are shown stay on the device once they
 * came, so that a piece that was opened has its photos without a network; what stands under a hash never changes.
 *
 * @param ask    the question to the server
 * @param later  keeps the worker awake for what goes on after the answer
 */
export async function answerPhoto(
  sha256: string,
  size: PhotoSize,
  ask: () => Promise<Response>,
  later: (work: Promise<unknown>) => void,
): Promise<Response> {
  const files = deviceFiles();
  const held = await files.read(`${sha256}.${size}`).catch(() => undefined);
  if (held !== undefined)
    return new Response(held, {
      headers: { 'content-type': typeOf(held, size), 'content-length': String(held.size) },
    });
  const answer = await ask();
  if (answer.ok && size !== 'original') later(keepShown(`${sha256}.${size}`, answer.clone()));
  return answer;
}

async function keepShown(name: string, answer: Response): Promise<void> {
  // A device without room shows the photo all the same.
  await answer
    .blob()
    .then((blob) => deviceFiles().write(name, blob))
    .catch(() => undefined);
}

function typeOf(blob: Blob, size: PhotoSize): string {
  if (size !== 'original') return 'image/jpeg';
  return blob.type === '' ? 'application/octet-stream' : blob.type;
}
