import { done, type Outcome, refuse } from '../ground/fault.ts';
import { type DraftEvent, draftEvent } from '../piece/event.ts';

/** How deep a value may nest: far past any document of ours, far short of what a stack can take. */
const deepest = 24;

/** Keys that reach behind an object in JavaScript; no field of ours is called so. */
const forbiddenKeys = new Set(['__proto__', 'prototype', 'constructor']);

/** The ids a piece may have: they stand in addresses and file names. */
export const pieceIdPattern = /^[A-Za-z0-9][A-Za-z0-9_-]{0,79}$/;

/** What a device may be called: any letters and signs, no control characters and no half of a surrogate pair. */
const devicePattern = /^\P{C}{1,200}$/u;

/**
 * The acts as a device handed them in, or every fault in them.
 *
 * @param events  what came, of any shape
 */
export function readDrafts(events: unknown): Outcome<DraftEvent[]> {
  if (!Array.isArray(events) || events.length === 0)
    return refuse('record.no-events', 'There is nothing to record: hand in a list "events".', 'events');
  if (events.length > 1000)
    return refuse('record.too-many-events', 'Hand in at most 1000 acts at once.', 'events');
  const hidden = hiddenKey(events);
  if (hidden !== undefined) return hidden;
  const faults = [];
  const drafts: DraftEvent[] = [];
  for (const [index, event] of events.entries()) {
    const read = draftEvent.safeParse(event);
    if (read.success) drafts.push(read.data);
    else {
      for (const issue of read.error.issues) {
        faults.push({
          code: 'record.not-an-event',
          path: ['events', index, ...issue.path].join('.'),
          message: `${issue.message}.`,
        });
      }
    }
  }
  if (faults.length > 0) return { ok: false, faults };
  const odd = drafts.findIndex(
    (draft) => !pieceIdPattern.test(draft.piece) || !devicePattern.test(draft.device),
  );
  if (odd >= 0)
    return refuse(
      'record.bad-id',
      'A piece and a device are named with letters, digits and hyphens.',
      `events.${odd}`,
    );
  return done(drafts);
}

/** A fault where something nests too deep or uses a key that reaches behind an object; walks without recursion. */
function hiddenKey(value: unknown): ReturnType<typeof refuse> | undefined {
  const waiting: { value: unknown; depth: number }[] = [{ value, depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (typeof next.value !== 'object' || next.value === null) continue;
    if (next.depth > deepest)
      return refuse('record.too-deep', 'This nests deeper than any record does: nothing was written.');
    for (const [key, inner] of Object.entries(next.value)) {
      if (forbiddenKeys.has(key)) return forbidden(key);
      if (typeof inner === 'string' && forbiddenKeys.has(inner) && Array.isArray(next.value))
        return forbidden(inner);
      waiting.push({ value: inner, depth: next.depth + 1 });
    }
  }
  return undefined;
}

function forbidden(key: string): ReturnType<typeof refuse> {
  return refuse('record.forbidden-key', `Nothing in a record may be called "${key}": nothing was written.`);
}
