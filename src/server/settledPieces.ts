import { type SettledCase, settledCase } from '../learning/settledCase.ts';
import { DamagedPiece } from '../record/damagedPiece.ts';
import type { RecordStore } from '../record/store.ts';

/** The settled cases of a record; a damaged piece says so at its own address and is passed over here. */
export function settledPieces(store: RecordStore): SettledCase[] {
  return store.pieces().flatMap((id) => {
    try {
      const piece = store.piece(id)?.piece;
      return (piece && settledCase(piece)) ?? [];
    } catch (error) {
      if (error instanceof DamagedPiece) return [];
      throw error;
    }
  });
}

/** A store that tells whenever an act may have changed a settled case: on a piece that is settled, or was just before. */
export function tellingOfSettled(store: RecordStore, tell: () => void): RecordStore {
  const isSettled = (id: string) => {
    try {
      const document = store.document(id) as { settled?: unknown } | undefined;
      return document?.settled !== undefined;
    } catch (error) {
      if (error instanceof DamagedPiece) return false;
      throw error;
    }
  };
  const telling = <Answer>(id: string, act: () => Answer): Answer => {
    const before = isSettled(id);
    const answer = act();
    if (before || isSettled(id)) tell();
    return answer;
  };
  return {
    ...store,
    undo: (id, request) => telling(id, () => store.undo(id, request)),
    redo: (id, request) => telling(id, () => store.redo(id, request)),
    append: (events) => {
      const ids = piecesOf(events);
      const before = ids.some(isSettled);
      const answer = store.append(events);
      if (before || ids.some(isSettled)) tell();
      return answer;
    },
    adopt: (foreign, onlyTry) => {
      const answer = store.adopt(foreign, onlyTry);
      if (!onlyTry && answer.ok) tell();
      return answer;
    },
  };
}

function piecesOf(events: unknown): string[] {
  if (!Array.isArray(events)) return [];
  const ids = events.map((each: { piece?: unknown } | null) => each?.piece);
  return [...new Set(ids.filter((id) => typeof id === 'string'))];
}
