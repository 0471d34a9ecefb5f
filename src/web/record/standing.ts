import type { Change, Json } from '../../piece/event.ts';
import { invertChanges, makeAll, openDocument } from '../../piece/fold.ts';
import { addDone, moveDone } from '../../piece/undo.ts';
import type { Act, PieceAnswer } from './act.ts';

/** An act in sight: its id, and its changes with what was there before. */
export type DoneAct = { id: string; changes: readonly Change[] };

/** A piece as the record last gave it, with the acts of this sitting that can be taken back in sight. */
export type Standing = {
  document: Json | undefined;
  /** Acts that stand, oldest first. */
  done: readonly DoneAct[];
  /** Acts taken back, last taken back at the end. */
  undone: readonly DoneAct[];
};

/** A piece of which nothing is known. */
export const nothingYet: Standing = { document: undefined, done: [], undone: [] };

/** A piece as the record gave it: nothing of this sitting in sight. */
export function standingOf(answer: PieceAnswer): Standing {
  return { document: answer.piece as Json, done: [], undone: [] };
}

/**
 * What a piece comes to when acts not yet handed in are taken as done.
 *
 * Method: events are folded on; an undo takes back the last act of this sitting that stands. Where no such act is in
 * sight (it was done on another day or device) an undo shows only once the record has answered. The opening of a piece
 * can't be taken back.
 */
export function standingAfter(before: Standing, acts: readonly Act[]): Standing {
  if (acts.length === 0) return before;
  const open = openDocument(before.document);
  const stacks = { done: [...before.done], undone: [...before.undone] };
  for (const act of acts) {
    if (act.type === 'event') {
      const changes = makeAll(open, act.event.changes);
      addDone(stacks, { id: act.event.id, changes }, act.event);
      continue;
    }
    const { of } = act.reversal;
    // The record takes back only the act that was meant.
    const moved = moveDone(stacks, act.type, ({ id }) => of === undefined || of === id);
    if (moved === undefined) continue;
    for (const change of act.type === 'undo' ? invertChanges(moved.changes) : moved.changes)
      open.make(change);
  }
  return { document: open.document(), ...stacks };
}
