import type { DraftEvent } from '../../piece/event.ts';
import type { RecordAnswer } from '../../server/recordRoutes.ts';
import type { PieceAnswer, Reversal } from './act.ts';

/** What came of asking the server: its answer, its refusal in words, or nobody there. */
export type Asked<Answer> =
  | { came: 'answer'; answer: Answer }
  | { came: 'refusal'; status: number; message: string; code?: string }
  | { came: 'nothing' };

/** The server's side of the record, as far as a screen needs it. */
export type PieceServer = {
  /** Which record answers, and whether it is only looked at. */
  which(): Promise<Asked<Pick<RecordAnswer, 'id'> & Partial<Pick<RecordAnswer, 'readOnly'>>>>;
  /** @param record  id of the record that is meant: another one refuses, and does nothing */
  read(id: string, record: string | undefined): Promise<Asked<PieceAnswer>>;
  record(id: string, events: readonly DraftEvent[], record: string | undefined): Promise<Asked<PieceAnswer>>;
  reverse(
    id: string,
    which: 'undo' | 'redo',
    reversal: Reversal,
    record: string | undefined,
  ): Promise<Asked<PieceAnswer>>;
};

/** The record over HTTP. `ask` is fetch, or a stand-in for it. */
export function pieceServer(ask: typeof fetch): PieceServer {
  const at = (id: string) => `/api/pieces/${encodeURIComponent(id)}`;
  return {
    which: () => askServer(ask, '/api/record'),
    read: (id, record) => askServer(ask, at(id), undefined, record),
    record: (id, events, record) => askServer(ask, `${at(id)}/events`, { events }, record),
    reverse: (id, which, reversal, record) => askServer(ask, `${at(id)}/${which}`, reversal, record),
  };
}

/**
 * Asks the server, and says in one shape what came.
 *
 * @param body  sent as JSON by POST; a GET where left out
 * @param record  id of the record that is meant, where it matters
 * @returns     `nothing` when nobody answered, or the answer was a passing trouble of the server (5xx, too slow, too
 *              much at once, not let in, a full disk), so that what was sent must be kept and sent again
 */
export async function askServer<Answer>(
  ask: typeof fetch,
  path: string,
  body?: unknown,
  record?: string,
): Promise<Asked<Answer>> {
  try {
    const answer = await ask(path, {
      ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
      headers: {
        ...(body === undefined ? {} : { 'content-type': 'application/json', 'x-underside': '1' }),
        ...(record === undefined ? {} : { 'x-underside-record': record }),
      },
      signal: AbortSignal.timeout(20_000),
    });
    return askedOf<Answer>(answer.status, await answer.text());
  } catch {
    return { came: 'nothing' };
  }
}

/**
 * What an answer over HTTP comes to.
 *
 * @throws SyntaxError where what should be an answer is no JSON: whoever sent it, it was not the record
 */
export function askedOf<Answer>(status: number, text: string): Asked<Answer> {
  if (status >= 200 && status < 300) return { came: 'answer', answer: JSON.parse(text) as Answer };
  if (status >= 500 || passing.has(status)) return { came: 'nothing' };
  return refusal(status, text);
}

/** Answers that say nothing of what was sent: not signed in, too slow, too much at once, a full disk, a record only looked at, not let in. */
const passing = new Set([401, 408, 425, 429]);
const passingCodes = new Set([
  'record.disk-full',
  'record.could-not-write',
  'record.read-only',
  'server.other-page',
  'server.strange-host',
]);

function refusal(status: number, text: string): Asked<never> {
  try {
    const told = JSON.parse(text) as { faults?: { code?: string; message?: string }[] };
    const faults = told.faults ?? [];
    if (faults.some((fault) => passingCodes.has(fault.code ?? ''))) return { came: 'nothing' };
    const words = faults.flatMap((fault) => (fault.message === undefined ? [] : [fault.message]));
    const code = faults[0]?.code;
    if (words.length > 0)
      return {
        came: 'refusal',
        status,
        message: words.join(' '),
        ...(code === undefined ? {} : { code }),
      };
  } catch {
    // The answer was not in the record's own form: say what can be said.
  }
  return { came: 'refusal', status, message: `The record refused it (${status}).` };
}
