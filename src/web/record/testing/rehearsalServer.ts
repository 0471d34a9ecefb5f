import type { Change, DraftEvent, Json } from '../../../piece/event.ts';
import { foldEvents, invertChanges, withBefore } from '../../../piece/fold.ts';
import type { RecordAnswer } from '../../../server/recordRoutes.ts';
import type { PieceAnswer } from '../act.ts';
import type { Asked, PieceServer } from '../pieceServer.ts';

/** A record in memory that follows the contract of the real one, for tests; `away` makes it not answer. */
export type RehearsalServer = PieceServer & {
  away: boolean;
  /** Answers are lost on the way back this many times: the acts are in the record all the same. */
  loseAnswers: number;
  refuse: (event: DraftEvent) => string | undefined;
  seen: string[];
  /** Id of the record that answers. */
  recordId: string;
  /** Why it takes no entries. */
  readOnly: RecordAnswer['readOnly'];
};

/** Opens an empty record. Every event id counts once; undo takes back the last act that stands. */
export function rehearsalServer(): RehearsalServer {
  const pieces = new Map<
    string,
    { document: Json | undefined; done: Change[][]; undone: Change[][]; seq: number }
  >();
  const ids = new Set<string>();
  const server: RehearsalServer = {
    away: false,
    loseAnswers: 0,
    refuse: () => undefined,
    seen: [],
    recordId: 'r1',
    readOnly: null,
    which: async () =>
      server.away
        ? { came: 'nothing' }
        : { came: 'answer', answer: { id: server.recordId, readOnly: server.readOnly } },
    read: async (id, record) => otherRecord(record) ?? answer(id),
    async record(id, events, record) {
      if (server.away || server.readOnly !== null) return { came: 'nothing' };
      const other = otherRecord(record);
      if (other !== undefined) return other;
      if (!pieces.has(id) && events[0]?.kind !== 'piece-opened')
        return { came: 'refusal', status: 404, message: 'Not opened.', code: 'record.not-opened' };
      for (const event of events) {
        const message = server.refuse(event);
        if (message !== undefined) return { came: 'refusal', status: 422, message };
      }
      for (const event of events) {
        if (ids.has(event.id)) continue;
        ids.add(event.id);
        server.seen.push(event.id);
        const here = pieces.get(id) ?? { document: undefined, done: [], undone: [], seq: 0 };
        const changes = withBefore(here.document, event.changes);
        pieces.set(id, {
          document: foldEvents(here.document, [{ changes }]),
          done: event.kind === 'piece-opened' ? [] : [...here.done, changes],
          undone: [],
          seq: here.seq + 1,
        });
      }
      return answer(id);
    },
    async reverse(id, which, reversal, record) {
      if (server.away || server.readOnly !== null) return { came: 'nothing' };
      const other = otherRecord(record);
      if (other !== undefined) return other;
      const here = pieces.get(id);
      if (here !== undefined && !ids.has(reversal.id)) {
        ids.add(reversal.id);
        server.seen.push(reversal.id);
        const top = which === 'undo' ? here.done.pop() : here.undone.pop();
        if (top !== undefined) {
          const changes = which === 'undo' ? invertChanges(top) : top;
          here.document = foldEvents(here.document, [{ changes }]);
          (which === 'undo' ? here.undone : here.done).push(top);
          here.seq += 1;
        }
      }
      return answer(id);
    },
  };
  const otherRecord = (record: string | undefined): Asked<PieceAnswer> | undefined =>
    !server.away && record !== undefined && record !== server.recordId
      ? { came: 'refusal', status: 409, message: 'Another record.', code: 'record.other-record' }
      : undefined;
  const answer = (id: string): Asked<PieceAnswer> => {
    if (server.away) return { came: 'nothing' };
    if (server.loseAnswers > 0) {
      server.loseAnswers -= 1;
      return { came: 'nothing' };
    }
    const here = pieces.get(id);
    if (here === undefined) return { came: 'refusal', status: 404, message: 'No such piece.' };
    return {
      came: 'answer',
      answer: {
        piece: here.document,
        seq: here.seq,
        canUndo: here.done.length > 0,
        canRedo: here.undone.length > 0,
        readOnly: false,
      },
    };
  };
  return server;
}
