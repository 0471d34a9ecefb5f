import { keep, names, namesKept, readKept } from '../drawer/drawer.ts';
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
      // Where the store is shut or full, the act goes to the outbox all the same.
      keep(`${names.act}${actId(act)}`, JSON.stringify(value), store);
    },
    drop: (id) => keep(`${names.act}${id}`, undefined, store),
    left() {
      return namesKept(names.act, store)
        .flatMap((name) => readAside(readKept(name, store)))
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
