import type { Change, Json } from '../../piece/event.ts';
import { invertChanges, makeAll, openDocument } from '../../piece/fold.ts';
import type { Act } from './act.ts';

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
  const done = [...before.done];
  const undone = [...before.undone];
  for (const act of acts) {
    if (act.type === 'event') {
      const changes = makeAll(open, act.event.changes);
      undone.length = 0;
      if (act.event.kind === 'piece-opened') done.length = 0;
      else done.push({ id: act.event.id, changes });
      continue;
    }
    const [from, to] = act.type === 'undo' ? [done, undone] : [undone, done];
    const top = from.at(-1);
    // The record takes back only the act that was meant.
    if (top === undefined || (act.reversal.of !== undefined && act.reversal.of !== top.id)) continue;
    from.pop();
    to.push(top);
    for (const change of act.type === 'undo' ? invertChanges(top.changes) : top.changes) open.make(change);
  }
  return { document: open.document(), done, undone };
}
