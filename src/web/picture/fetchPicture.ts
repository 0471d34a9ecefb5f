import type { Photo } from '../../piece/photo.ts';

/** Kinds of file that every browser decodes. */
const readable = ['image/jpeg', 'image/png', 'image/webp'];

/** Whether the original of a photo can be opened here, or only the copy made for screens. */
export function opensWhole(photo: Pick<Photo, 'mediaType'>): boolean {
  return readable.includes(photo.mediaType);
}

/**
 * Fetches a photo's file from the record.
 *
 * @param tell  called with the share fetched, 0–1
 * @throws Error in one sentence that says what to do
 */
export async function fetchPicture(
  photo: Pick<Photo, 'sha256' | 'mediaType' | 'bytes'>,
  tell: (share: number) => void,
  signal: AbortSignal,
): Promise<Blob> {
  const whole = opensWhole(photo);
  const answer = await fetch(`/api/photos/${photo.sha256}/${whole ? 'original' : 'view'}`, { signal }).catch(
    () => undefined,
  );
  if (!answer?.ok || answer.body === null)
    throw new Error('The photo could not be had from the record: see whether it is reached, and try again.');
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const reader = answer.body.getReader();
  const of = Number(answer.headers.get('content-length')) || photo.bytes;
  for (let had = 0; ; ) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    had += value.length;
    tell(Math.min(1, had / of));
  }
  return new Blob(parts, { type: whole ? photo.mediaType : 'image/jpeg' });
}
