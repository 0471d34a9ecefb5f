import type { Json, RecordedEvent } from './event.ts';

/** A value that an act wrote over without its device having seen it, until an examiner settles which holds. */
export type Overwritten = {
  /** The act that wrote over it. */
  act: string;
  path: string[];
  /** What stood there, and what was put in its place; left out where nothing stood, or the place was emptied. */
  earlier?: Json;
  later?: Json;
  who: string;
  device: string;
  at: string;
};

/** As it is kept in the state of a piece: settled by an act, or gone with the act that was taken back. */
export type OverwrittenState = Overwritten & { settledBy?: string; isTakenBack?: true };

/**
 * The overwritten values of a piece after one more act. An act that names an overwriting act as its `of` settles the
 * places it sets; taking an act back takes back what it overwrote or settled.
 *
 * @param moved  the act that an undo takes back or a redo brings back
 */
export function overwrittenAfter(
  before: readonly OverwrittenState[],
  event: RecordedEvent,
  moved: RecordedEvent | undefined,
): readonly OverwrittenState[] {
  if (event.kind === 'undo' || event.kind === 'redo') {
    if (moved === undefined || before.length === 0) return before;
    return event.kind === 'undo' ? before.map((one) => takenBack(one, moved)) : broughtBack(before, moved);
  }
  const settled = event.kind === 'overwrite-settled' ? before.map((one) => settledBy(one, event)) : before;
  const fresh = overwrittenBy(event);
  return fresh.length === 0 ? settled : [...settled, ...fresh];
}

/** The values that wait for an examiner. */
export function unsettled(all: readonly OverwrittenState[]): Overwritten[] {
  return all.flatMap(({ settledBy: by, isTakenBack, ...one }) =>
    by === undefined && isTakenBack === undefined ? [one] : [],
  );
}

function overwrittenBy({ id, who, device, at, changes }: RecordedEvent): OverwrittenState[] {
  return changes.flatMap(({ path, from, to, saw }) =>
    saw === undefined
      ? []
      : [
          {
            act: id,
            path,
            ...(from === undefined ? {} : { earlier: from }),
            ...(to === undefined ? {} : { later: to }),
            who,
            device,
            at,
          },
        ],
  );
}

function settles(one: Overwritten, event: RecordedEvent): boolean {
  return event.of === one.act && event.changes.some(({ path }) => samePath(path, one.path));
}

function settledBy(one: OverwrittenState, event: RecordedEvent): OverwrittenState {
  return settles(one, event) ? { ...one, settledBy: event.id } : one;
}

function takenBack(one: OverwrittenState, moved: RecordedEvent): OverwrittenState {
  const { settledBy: by, ...rest } = one;
  const open = by === moved.id ? rest : one;
  return one.act === moved.id ? { ...open, isTakenBack: true } : open;
}

function broughtBack(all: readonly OverwrittenState[], moved: RecordedEvent): OverwrittenState[] {
  return all.map((one) => {
    const { isTakenBack: _gone, ...rest } = one;
    if (one.act === moved.id) return rest;
    return moved.kind === 'overwrite-settled' ? settledBy(one, moved) : one;
  });
}

function samePath(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((key, at) => key === b[at]);
}
