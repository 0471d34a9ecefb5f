import type { Json, RecordedEvent } from '../piece/event.ts';
import { foldEvents } from '../piece/fold.ts';

/** What the record knows of one piece after some of its events. Never changed in place. */
export type PieceState = {
  /** The document as folded, or undefined before the piece was opened. */
  document: Json | undefined;
  /** Place of its last event in the whole record; 0 when it has none. */
  position: number;
  /** Acts that an undo would take back, the last one last. */
  done: readonly RecordedEvent[];
  /** Acts that a redo would bring back, the next one last. */
  undone: readonly RecordedEvent[];
  firstAt: string | undefined;
  lastAt: string | undefined;
};

/** A piece with no event yet; an example begins from its document. */
export function newState(base?: Json): PieceState {
  return { document: base, position: 0, done: [], undone: [], firstAt: undefined, lastAt: undefined };
}

/**
 * The state after one more event. An act can be undone, and ends what could be redone; an undo moves the last act
 * over to be redone, a redo moves it back. The opening of a piece stays.
 */
export function afterEvent(state: PieceState, event: RecordedEvent, position: number): PieceState {
  return {
    ...afterAct(state, event),
    document: foldEvents(state.document, [event]),
    position,
    firstAt: state.firstAt ?? event.at,
    lastAt: event.at,
  };
}

function afterAct(state: PieceState, event: RecordedEvent): PieceState {
  if (event.kind === 'undo') {
    const taken = state.done.at(-1);
    return {
      ...state,
      done: state.done.slice(0, -1),
      undone: taken ? [...state.undone, taken] : state.undone,
    };
  }
  if (event.kind === 'redo') {
    const brought = state.undone.at(-1);
    return {
      ...state,
      undone: state.undone.slice(0, -1),
      done: brought ? [...state.done, brought] : state.done,
    };
  }
  return { ...state, done: event.kind === 'piece-opened' ? [] : [...state.done, event], undone: [] };
}
