import { z } from 'zod';
import { photo } from '../../../piece/photo.ts';
import { type Asked, askedOf } from '../../record/pieceServer.ts';
import type { HeldPhoto } from './heldPhoto.ts';
import type { TakenPhoto } from './photoKeeper.ts';

/** What the record knows of a photo once its bytes are kept. */
const taken = z.object({
  sha256: photo.shape.sha256,
  mediaType: photo.shape.mediaType,
  bytes: photo.shape.bytes,
  widthPx: photo.shape.widthPx,
  heightPx: photo.shape.heightPx,
  takenAt: photo.shape.takenAt,
  camera: photo.shape.camera,
  note: z.string().optional(),
});

/** How long nothing may move before the record counts as away; making the shown sizes of a large picture takes a while. */
const stillForMs = 60_000;

/**
 * Hands one photo to the record, byte for byte, under its SHA-256. What was interrupted is handed over whole again; what
 * the record has already it takes from its own.
 *
 * @param tell  called with the share handed over, 0–1
 */
export function putPhoto(
  { sha256, name, type }: Pick<HeldPhoto, 'sha256' | 'name' | 'type'>,
  bytes: Blob,
  tell: (share: number) => void,
): Promise<Asked<TakenPhoto>> {
  return new Promise((answer) => {
    const request = new XMLHttpRequest();
    request.open('PUT', `/api/photos/${sha256}`);
    request.setRequestHeader('x-underside', '1');
    request.setRequestHeader('x-name', encodeURIComponent(name));
    request.setRequestHeader('content-type', type === '' ? 'application/octet-stream' : type);
    const away = () => answer({ came: 'nothing' });
    const still = { timer: setTimeout(() => request.abort(), stillForMs) };
    request.upload.onprogress = (event) => {
      clearTimeout(still.timer);
      still.timer = setTimeout(() => request.abort(), stillForMs);
      if (event.lengthComputable) tell(event.loaded / event.total);
    };
    request.onerror = away;
    request.onabort = away;
    request.onloadend = () => clearTimeout(still.timer);
    request.onload = () => answer(read(request.status, request.responseText));
    request.send(bytes);
  });
}

function read(status: number, text: string): Asked<TakenPhoto> {
  const asked = askedOrNothing(status, text);
  if (asked.came !== 'answer') return asked;
  const facts = taken.safeParse(asked.answer);
  return facts.success
    ? { came: 'answer', answer: facts.data }
    : {
        came: 'refusal',
        status,
        message:
          'The record answered in a way this page does not understand. Load the page anew and try again.',
      };
}

/** What is no answer of the record (the page of an inn's network that wants a name first) counts as none. */
function askedOrNothing(status: number, text: string): Asked<unknown> {
  try {
    return askedOf(status, text);
  } catch {
    return { came: 'nothing' };
  }
}
