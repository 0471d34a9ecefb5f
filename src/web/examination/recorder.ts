import type { EventKind } from '../../piece/event.ts';
import type { Act } from './answerSign.ts';

/** Records an act on the piece; a void act (nothing to change) is not recorded. */
export type Recorder = (act: Act) => void;

/** The recorder over the piece's own record. */
export function recorderOf(
  record: (kind: EventKind, changes: Act['changes']) => void,
  readOnly: boolean,
): Recorder {
  return (act) => {
    if (!readOnly && act.changes.length > 0) record(act.kind, act.changes);
  };
}
