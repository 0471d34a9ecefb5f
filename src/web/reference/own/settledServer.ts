import type { SettledAnswer } from '../../../server/settledRoutes.ts';
import { type Asked, askServer } from '../../record/pieceServer.ts';

const at = '/api/own-knowledge/settled';

/** Where the settled cases are reckoned, a long work. */
export const reckonAt = `${at}/reckon`;

/** The settled cases, and how learning from them stands. */
export function listSettled(): Promise<Asked<SettledAnswer>> {
  return askServer(fetch, at);
}

/** Switches learned figures on or off. */
export function switchLearned(on: boolean): Promise<Asked<SettledAnswer>> {
  return askServer(fetch, `${at}/use`, { on });
}

/** Leaves a case out, or puts it back. */
export function leaveOut(piece: string, out: boolean): Promise<Asked<SettledAnswer>> {
  return askServer(fetch, `${at}/leave-out`, { piece, out });
}
