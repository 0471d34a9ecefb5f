import { freshId, momentWithZone, readIdentity } from '../record/identity.ts';
import { type Asked, askServer } from '../record/pieceServer.ts';

/** Makes a piece of one's own from a worked example; answers its id. */
export function copyPiece(id: string): Promise<Asked<{ id: string }>> {
  return askServer(fetch, `/api/pieces/${encodeURIComponent(id)}/copy`, {
    ...readIdentity(),
    at: momentWithZone(new Date()),
    id: freshId(),
  });
}
