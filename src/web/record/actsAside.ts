import { type Act, actId } from './act.ts';

/** An act set aside, and the record it was made for. */
export type ActAside = { act: Act; record: string | undefined };

/**
 * Where an act is put in the moment it is made, for as long as the browser's store takes to have it: a page that is
 * loaded anew in that moment would lose it, since the store answers only later.
 */
export type ActsAside = {
  put(act: Act, record: string | undefined): void;
  drop(id: string): void;
  /** What was set aside by an earlier page of this tab, or by a tab that is gone. Oldest first. */
  left(): ActAside[];
};

const prefix = 'underside.act.';

/** How old an act of another tab must be before it is taken for one that was left behind. */
const leftAfterMs = 5000;

/**
 * Acts set aside in a store that writes at once, as localStorage does.
 *
 * @param tab    of this tab, the same after a reload
 * @param nowMs  the clock
 */
export function actsAside(store: Storage | undefined, tab: string, nowMs: () => number): ActsAside {
  const counter = { made: 0 };
  return {
    put(act, record) {
      counter.made += 1;
      const value = { act, record, tab, atMs: nowMs(), order: counter.made };
      try {
        store?.setItem(`${prefix}${actId(act)}`, JSON.stringify(value));
      } catch {
        // The store is shut or full: the act goes to the outbox all the same.
      }
    },
    drop: (id) => store?.removeItem(`${prefix}${id}`),
    left() {
      const names = Array.from({ length: store?.length ?? 0 }, (_, at) => store?.key(at) ?? '');
      return names
        .filter((name) => name.startsWith(prefix))
        .flatMap((name) => readAside(store?.getItem(name)))
        .filter((one) => one.tab === tab || nowMs() - one.atMs > leftAfterMs)
        .sort((a, b) => a.atMs - b.atMs || a.order - b.order)
        .map(({ act, record }) => ({ act, record }));
    },
  };
}

type Kept = ActAside & { tab: string; atMs: number; order: number };

function readAside(text: string | null | undefined): Kept[] {
  try {
    const kept = JSON.parse(text ?? 'null') as Kept | null;
    return kept === null ? [] : [kept];
  } catch {
    return [];
  }
}
