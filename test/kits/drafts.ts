import { randomUUID } from 'node:crypto';
import type { Change, DraftEvent, EventKind } from '../../src/piece/event.ts';

const moment = '2026-11-25T10:15:00.000+01:00';

/** An act as a device would hand it in, with an id of its own. */
export function act(
  piece: string,
  kind: EventKind,
  changes: Change[],
  more: Partial<DraftEvent> = {},
): DraftEvent {
  return {
    id: randomUUID(),
    piece,
    kind,
    changes,
    who: 'Perrin Halloway (invented)',
    device: 'tablet-1',
    at: moment,
    ...more,
  };
}

/** The act that opens a side chair. */
export function opening(piece: string, more: Partial<DraftEvent> = {}): DraftEvent {
  return act(
    piece,
    'piece-opened',
    [{ path: [], to: { id: piece, form: 'side-chair', title: 'A chair' } }],
    more,
  );
}

/** The act that records one sign as present. */
export function finding(
  piece: string,
  sign: string,
  part: string,
  more: Partial<DraftEvent> = {},
): DraftEvent {
  const id = `${sign}@${part}`;
  return act(
    piece,
    'finding-recorded',
    [{ path: ['findings', id], to: { id, sign, part, state: 'present' } }],
    more,
  );
}

/** A request to undo or redo. */
export function step(more: Partial<DraftEvent> = {}): Pick<DraftEvent, 'id' | 'device' | 'who' | 'at'> {
  return {
    id: more.id ?? randomUUID(),
    device: more.device ?? 'tablet-1',
    who: more.who ?? '',
    at: more.at ?? moment,
  };
}
