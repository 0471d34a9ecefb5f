import type { Change, DraftEvent, Json } from './event.ts';

/**
 * What a piece comes to after the given acts: each change sets or removes one place of the document.
 * Never changes its arguments. A path through something that is not there makes it.
 *
 * @param state  the document before, or undefined for a piece not yet opened
 * @returns the document after
 */
export function foldEvents(
  state: Json | undefined,
  events: readonly Pick<DraftEvent, 'changes'>[],
): Json | undefined {
  let now = state;
  for (const event of events) for (const change of event.changes) now = applyChange(now, change);
  return now;
}

/** The document with one change made. The empty path stands for the whole document. */
export function applyChange(state: Json | undefined, change: Change): Json | undefined {
  return setAt(state, change.path, change.to);
}

/** What stands at a path, or undefined. */
export function valueAt(state: Json | undefined, path: readonly string[]): Json | undefined {
  let here = state;
  for (const key of path) {
    if (!isRecord(here) || !Object.hasOwn(here, key)) return undefined;
    here = here[key];
  }
  return here;
}

/** The same changes with `from` filled in from the state they are made on, in order. */
export function withBefore(state: Json | undefined, changes: readonly Change[]): Change[] {
  let now = state;
  return changes.map((change) => {
    const from = valueAt(now, change.path);
    now = applyChange(now, change);
    return from === undefined
      ? { path: change.path, to: change.to }
      : { path: change.path, to: change.to, from };
  });
}

/** The changes that take the given ones back, last first. */
export function invertChanges(changes: readonly Change[]): Change[] {
  return changes.toReversed().map((change) => ({ path: change.path, to: change.from, from: change.to }));
}

function setAt(here: Json | undefined, path: readonly string[], to: Json | undefined): Json | undefined {
  const [key, ...rest] = path;
  if (key === undefined) return to;
  const record = isRecord(here) ? here : {};
  const inner = setAt(Object.hasOwn(record, key) ? record[key] : undefined, rest, to);
  const next = Object.fromEntries(Object.entries(record).filter(([name]) => name !== key));
  if (inner !== undefined)
    Object.defineProperty(next, key, { value: inner, enumerable: true, configurable: true, writable: true });
  return next;
}

function isRecord(value: Json | undefined): value is { [key: string]: Json } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
