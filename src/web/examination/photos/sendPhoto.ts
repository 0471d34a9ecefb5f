import { z } from 'zod';
import { photo } from '../../../piece/photo.ts';
import { sha256Hex } from './sha256Hex.ts';

/** What the record knows of a photo once its bytes are kept. */
const kept = z.object({
  sha256: photo.shape.sha256,
  mediaType: photo.shape.mediaType,
  bytes: photo.shape.bytes,
  widthPx: photo.shape.widthPx,
  heightPx: photo.shape.heightPx,
  takenAt: photo.shape.takenAt,
  camera: photo.shape.camera,
  note: z.string().optional(),
});
export type KeptPhoto = z.infer<typeof kept>;

/**
 * Hands one photo to the record, byte for byte, under its SHA-256.
 *
 * @param tell  called with the share handed over, 0–1
 * @throws Error  with one plain sentence that can be shown as it stands
 */
export async function sendPhoto(file: File, tell: (share: number) => void): Promise<KeptPhoto> {
  const bytes = await readBytes(file);
  const sha256 = await sha256Hex(bytes, globalThis.crypto?.subtle);
  const answer = await putBytes(`/api/photos/${sha256}`, file, bytes, tell);
  const read = kept.safeParse(answer);
  if (!read.success)
    throw new Error(
      'The record answered in a way this page does not understand. Load the page anew and try again.',
    );
  return read.data;
}

async function readBytes(file: File): Promise<ArrayBuffer> {
  if (file.size === 0) throw new Error('The file is empty. Take or choose the photo again.');
  try {
    return await file.arrayBuffer();
  } catch {
    throw new Error('The file could not be read from this device. Choose it again.');
  }
}

function putBytes(
  url: string,
  file: File,
  bytes: ArrayBuffer,
  tell: (share: number) => void,
): Promise<unknown> {
  return new Promise((keep, refuse) => {
    const request = new XMLHttpRequest();
    request.open('PUT', url);
    request.setRequestHeader('x-underside', '1');
    request.setRequestHeader('x-name', encodeURIComponent(file.name));
    request.setRequestHeader('content-type', file.type === '' ? 'application/octet-stream' : file.type);
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) tell(event.loaded / event.total);
    };
    request.onerror = () =>
      refuse(new Error('The record could not be reached. The photo is still here: try again.'));
    request.onload = () => {
      const answer = asJson(request.responseText);
      if (request.status >= 200 && request.status < 300) keep(answer);
      else refuse(new Error(refusal(answer)));
    };
    request.send(bytes);
  });
}

function asJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const faults = z.object({ faults: z.array(z.object({ message: z.string() })).min(1) });

function refusal(answer: unknown): string {
  const read = faults.safeParse(answer);
  if (read.success) return read.data.faults.map((fault) => fault.message).join(' ');
  return 'The record did not take the photo and gave no reason. Try again.';
}
