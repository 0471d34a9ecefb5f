import type { Change, Json, RecordedEvent } from '../piece/event.ts';
import { makeAll, openDocument } from '../piece/fold.ts';
import { type OverwrittenState, overwrittenAfter } from '../piece/overwritten.ts';
import { addDone, isSignature, moveDone, type UndoStacks } from '../piece/undo.ts';

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
  /** Values that were written over unseen, settled or not. */
  overwritten: readonly OverwrittenState[];
  /** How many events it has. */
  count: number;
  /** What an undo stops at: a signature is never taken back, nor is the opening of the piece. */
  stopsAt: 'opening' | 'signature';
  firstAt: string | undefined;
  lastAt: string | undefined;
};

/** A piece with no event yet; an example begins from its document. */
export function newState(base?: Json): PieceState {
  return {
    document: base,
    position: 0,
    done: [],
    undone: [],
    overwritten: [],
    count: 0,
    stopsAt: 'opening',
    firstAt: undefined,
    lastAt: undefined,
  };
}

/**
 * The state after one more event. An act can be undone, and ends what could be redone; an undo moves the last act
 * over to be redone, a redo moves it back. The opening of a piece stays, and so does a signature with all before it.
 */
export function afterEvent(state: PieceState, event: RecordedEvent, position: number): PieceState {
  const steps = stepsFrom(state);
  steps.make(event.changes);
  steps.count(event, position);
  return steps.state();
}

/** A piece on its way through many events. Each is made first, then counted. */
export type PieceSteps = {
  /** Makes changes; gives them back with what stood before each. */
  make(changes: readonly Change[]): Change[];
  /** What stands at a place of the document now. */
  at(path: readonly string[]): Json | undefined;
  /** Counts the event whose changes were made. */
  count(event: RecordedEvent, position: number): void;
  /** The state as it is now; it is not changed by what follows. */
  state(): PieceState;
};

/** What a whole history comes to, its events in order. */
export function stateAfterAll(events: readonly { event: RecordedEvent; position: number }[]): PieceState {
  const steps = stepsFrom(newState());
  for (const { event, position } of events) {
    steps.make(event.changes);
    steps.count(event, position);
  }
  return steps.state();
}

/** Opens a state for many events: the work grows with what they change, not with what the piece holds. */
export function stepsFrom(state: PieceState): PieceSteps {
  const open = openDocument(state.document);
  const now = { ...state, done: [...state.done], undone: [...state.undone] };
  return {
    make: (changes) => makeAll(open, changes),
    at: open.at,
    count(event, position) {
      now.overwritten = overwrittenAfter(now.overwritten, event, countAct(now, event));
      now.count += 1;
      now.position = position;
      now.firstAt ??= event.at;
      now.lastAt = event.at;
    },
    state: () => ({ ...now, done: [...now.done], undone: [...now.undone], document: open.document() }),
  };
}

/** Moves acts between those that stand and those taken back; gives back the one that an undo or redo moved. */
function countAct(
  now: UndoStacks<RecordedEvent> & Pick<PieceState, 'stopsAt'>,
  event: RecordedEvent,
): RecordedEvent | undefined {
  if (event.kind === 'undo' || event.kind === 'redo') return moveDone(now, event.kind);
  addDone(now, event, event);
  if (isSignature(event)) now.stopsAt = 'signature';
  else if (event.kind === 'piece-opened') now.stopsAt = 'opening';
  return undefined;
}
