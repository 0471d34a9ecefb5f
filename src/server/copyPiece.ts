import { randomUUID } from 'node:crypto';
import { done, type Outcome } from '../ground/fault.ts';
import type { DraftEvent } from '../piece/event.ts';
import type { Piece } from '../piece/piece.ts';
import type { PhotoFolder } from '../record/photos.ts';
import type { RecordStore } from '../record/store.ts';

/** Who asks for the copy, and the id it is to have. Asking twice with one id makes one copy. */
export type CopyRequest = Pick<DraftEvent, 'who' | 'device' | 'at'> & { id: string };

/** Makes a piece of the user's own from another: all of it but its signature, with its photos kept as theirs. */
export async function copyPiece(
  store: RecordStore,
  photos: PhotoFolder,
  from: Piece,
  request: CopyRequest,
): Promise<Outcome<{ id: string }>> {
  if (store.piece(request.id) !== undefined) return done({ id: request.id });
  for (const photo of Object.values(from.photos)) {
    const adopted = await photos.adopt(photo.sha256);
    if (!adopted.ok) return adopted;
  }
  const { signedOn: _signedOn, ...opinion } = from.opinion;
  // A verdict belongs to the one piece: counted twice it would teach the figures twice.
  const { settled: _settled, ...piece } = from;
  const to = {
    ...piece,
    id: request.id,
    example: false,
    putAway: false,
    openedOn: request.at.slice(0, 10),
    opinion: { ...opinion, status: 'draft', signedBy: '', isNew: '', why: '' },
    issued: {},
  };
  const opened = store.append([
    {
      id: randomUUID(),
      piece: request.id,
      kind: 'piece-opened',
      changes: [{ path: [], to: JSON.parse(JSON.stringify(to)) }],
      who: request.who,
      device: request.device,
      at: request.at,
    },
  ]);
  return opened.ok ? done({ id: request.id }) : opened;
}
