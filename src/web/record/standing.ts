import type { Change, Json } from '../../piece/event.ts';
import { foldEvents, invertChanges, withBefore } from '../../piece/fold.ts';
import type { Act } from './act.ts';

/** A piece as the record last gave it, with the acts of this sitting that can be taken back in sight. */
export type Standing = {
  document: Json | undefined;
  /** Changes of acts that stand, oldest first, with what was there before. */
  done: readonly (readonly Change[])[];
  /** Changes of acts taken back, last taken back at the end. */
  undone: readonly (readonly Change[])[];
};

/**
 * What a piece comes to when acts not yet handed in are taken as done.
 *
 * Method: events are folded on; an undo takes back the last act of this sitting that stands. Where no such act is in
 * sight (it was done on another day or device) an undo shows only once the record has answered. The opening of a piece
 * can't be taken back.
 */
export function standingAfter(before: Standing, acts: readonly Act[]): Standing {
  return acts.reduce(afterOne, before);
}

function afterOne(before: Standing, act: Act): Standing {
  const { document, done, undone } = before;
  if (act.type === 'event') {
    const changes = withBefore(document, act.event.changes);
    if (act.event.kind === 'piece-opened')
      return { document: foldEvents(document, [{ changes }]), done: [], undone: [] };
    return { document: foldEvents(document, [{ changes }]), done: [...done, changes], undone: [] };
  }
  const from = act.type === 'undo' ? done : undone;
  const top = from.at(-1);
  if (top === undefined) return before;
  const rest = from.slice(0, -1);
  return act.type === 'undo'
    ? {
        document: foldEvents(document, [{ changes: invertChanges(top) }]),
        done: rest,
        undone: [...undone, top],
      }
    : { document: foldEvents(document, [{ changes: [...top] }]), done: [...done, top], undone: rest };
}
