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
  const open = openDocument(state);
  for (const event of events) for (const change of event.changes) open.make(change);
  return open.document();
}

/** The document with one change made. The empty path stands for the whole document. */
export function applyChange(state: Json | undefined, change: Change): Json | undefined {
  return foldEvents(state, [{ changes: [change] }]);
}

/** A document on its way through many changes. */
export type OpenDocument = {
  /** Makes a change; gives back what stood in its place. */
  make(change: Change): Json | undefined;
  /** What stands at a path now. */
  at(path: readonly string[]): Json | undefined;
  /** The document as it is now. What is handed out is never changed by later ones. */
  document(): Json | undefined;
};

/**
 * Opens a document for many changes: each object of it is copied once, when first something in it changes, so that the
 * work grows with the changes and not with changes times the size of the piece.
 *
 * @param start   left as it is
 * @param copied  told how many fields each object had that was copied
 */
export function openDocument(
  start: Json | undefined,
  copied: (fields: number) => void = () => {},
): OpenDocument {
  const open = { now: start, own: new Set<object>() };
  const ownCopy = (here: Json | undefined): JsonObject => {
    if (isRecord(here) && open.own.has(here)) return here;
    const copy: JsonObject = isRecord(here) ? { ...here } : {};
    copied(Object.keys(copy).length);
    open.own.add(copy);
    return copy;
  };
  const setAt = (
    here: Json | undefined,
    [key, ...rest]: readonly string[],
    to: Json | undefined,
  ): Json | undefined => {
    if (key === undefined) return to;
    const record = ownCopy(here);
    const inner = setAt(Object.hasOwn(record, key) ? record[key] : undefined, rest, to);
    // Removed first, so that what was changed last stands last.
    delete record[key];
    if (inner !== undefined)
      Object.defineProperty(record, key, {
        value: inner,
        enumerable: true,
        configurable: true,
        writable: true,
      });
    return record;
  };
  return {
    make({ path, to }) {
      const from = valueAt(open.now, path);
      open.now = setAt(open.now, path, to);
      return from;
    },
    at: (path) => valueAt(open.now, path),
    document() {
      open.own.clear();
      return open.now;
    },
  };
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
  return makeAll(openDocument(state), changes);
}

/** Makes changes in order; gives them back with `from` filled in. */
export function makeAll(open: OpenDocument, changes: readonly Change[]): Change[] {
  return changes.map((change) => {
    const { path, to, saw } = change;
    const from = open.make(change);
    return {
      path,
      to,
      ...(from === undefined ? {} : { from }),
      ...(saw === undefined ? {} : { saw }),
    };
  });
}

/** The changes that take the given ones back, last first. */
export function invertChanges(changes: readonly Change[]): Change[] {
  return changes.toReversed().map((change) => ({ path: change.path, to: change.from, from: change.to }));
}

type JsonObject = { [key: string]: Json };

function isRecord(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
