import { useCallback, useMemo, useSyncExternalStore } from 'react';
import type { Change, EventKind } from '../../piece/event.ts';
import type { Overwritten } from '../../piece/overwritten.ts';
import { useDesk } from './DeskProvider.tsx';
import type { PieceView } from './deskState.ts';

/** What a screen sees of a piece and can do to it. */
export type UsedPiece = PieceView & {
  record: (kind: EventKind, changes: Change[]) => void;
  undo: () => void;
  redo: () => void;
  /** Says which of two values holds where one was written over unseen. */
  settle: (one: Overwritten, which: 'earlier' | 'later') => void;
  dismissRefusals: () => void;
};

/**
 * One piece on the screen: what it comes to, acts on it, and whether the record has them.
 *
 * `record` shows the act at once, keeps it on this device and hands it in; nothing needs awaiting.
 */
export function usePiece(id: string): UsedPiece {
  const desk = useDesk();
  const view = useSyncExternalStore(
    useCallback((listener: () => void) => desk.watch(id, listener), [desk, id]),
    () => desk.view(id),
  );
  const acts = useMemo(
    () => ({
      record: (kind: EventKind, changes: Change[]) => desk.record(id, kind, changes),
      undo: () => desk.undo(id),
      redo: () => desk.redo(id),
      settle: (one: Overwritten, which: 'earlier' | 'later') => {
        const to = one[which];
        const change = to === undefined ? { path: one.path } : { path: one.path, to };
        desk.record(id, 'overwrite-settled', [change], one.act);
      },
      dismissRefusals: () => desk.dismissRefusals(id),
    }),
    [desk, id],
  );
  return useMemo(() => ({ ...view, ...acts }), [view, acts]);
}
