import { createHash } from 'node:crypto';
import type { Change, Json, RecordedEvent } from '../piece/event.ts';
import { hashEvent } from './chain.ts';

/** The name a piece of another record has when it is brought in beside the one of its own name: the same each time. */
export function besideId(piece: string, record: string): string {
  return `${piece.slice(0, 60)}-${createHash('sha256').update(record).digest('hex').slice(0, 8)}`;
}

/**
 * The acts of a piece as those of another piece: with ids made from theirs, so that bringing the same file in twice is
 * harmless, and the new name wherever the piece says its own.
 */
export function besideActs(acts: readonly RecordedEvent[], piece: string): RecordedEvent[] {
  return acts.map((act) => {
    const { origin: _origin, ...rest } = act;
    const moved = {
      ...rest,
      id: idFrom(piece, act.id),
      piece,
      ...(act.of === undefined ? {} : { of: idFrom(piece, act.of) }),
      changes: act.changes.map((change) => besideChange(change, piece)),
    };
    return { ...moved, hash: hashEvent(moved) };
  });
}

/** Whatever title the piece ever had says that it is the one beside: what stood before an act must be what the act before it set. */
function besideChange(change: Change, piece: string): Change {
  const { path, to, from, saw } = change;
  if (path.length === 0) return to === undefined ? change : { ...change, to: renamed(to, piece) };
  if (path.length > 1 || path[0] !== 'title') return change;
  return {
    ...change,
    to: besideTitle(to),
    from: besideTitle(from),
    ...(saw === undefined ? {} : { saw: { value: besideTitle(saw.value) } }),
  };
}

function renamed(document: Json, id: string): Json {
  if (typeof document !== 'object' || document === null || Array.isArray(document)) return document;
  return { ...document, id, title: besideTitle(document.title) };
}

function besideTitle(title: Json | undefined): Json {
  if (title !== undefined && typeof title !== 'string') return title;
  return `${title === undefined || title === '' ? 'A piece' : title} (brought in beside)`;
}

/** A UUID of version 8 (RFC 9562: made in a way of one's own) from a name and an id. */
function idFrom(name: string, id: string): string {
  const hex = createHash('sha256').update(`${name} ${id}`).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
