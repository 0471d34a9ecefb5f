import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Act, PieceAnswer, QueuedAct } from './act.ts';

/** Where acts wait until the record has them, and what was last known of each piece. */
export type Outbox = {
  /** False where this browser keeps nothing once the tab is closed. */
  lasting: boolean;
  all(): Promise<QueuedAct[]>;
  /** @param record  id of the record the act was made for; undefined where it is not known */
  add(act: Act, record: string | undefined): Promise<number>;
  remove(places: readonly number[]): Promise<void>;
  /** Keeps the last answer of a piece, so that it opens when the server is gone. */
  know(record: string | undefined, id: string, answer: PieceAnswer): Promise<void>;
  /** @param record  where it is not known, any record that has the piece will do */
  known(record: string | undefined, id: string): Promise<PieceAnswer | undefined>;
  /** Every piece of a record that is known here, by its id. */
  allKnown(record: string | undefined): Promise<[id: string, answer: PieceAnswer][]>;
};

type StoredAct = { act: Act; record?: string };

interface OutboxSchema extends DBSchema {
  /** An act by itself was stored before records had ids. */
  acts: { key: number; value: StoredAct | Act };
  pieces: { key: string; value: PieceAnswer };
}

/** The outbox in this browser's own store; in memory, and saying so, where the browser refuses one. */
export async function openOutbox(name = 'underside-outbox'): Promise<Outbox> {
  try {
    const store = await openDB<OutboxSchema>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('acts', { autoIncrement: true });
        fresh.createObjectStore('pieces');
      },
    });
    return storedOutbox(store);
  } catch {
    return memoryOutbox();
  }
}

function storedOutbox(store: IDBPDatabase<OutboxSchema>): Outbox {
  return {
    lasting: true,
    async all() {
      const reading = store.transaction('acts');
      const [places, acts] = await Promise.all([reading.store.getAllKeys(), reading.store.getAll()]);
      return acts.flatMap((stored, index) => {
        const place = places[index];
        return place === undefined ? [] : [queued(place, stored)];
      });
    },
    add: (act, record) => store.add('acts', record === undefined ? { act } : { act, record }),
    async remove(places) {
      const writing = store.transaction('acts', 'readwrite');
      await Promise.all([...places.map((place) => writing.store.delete(place)), writing.done]);
    },
    async know(record, id, answer) {
      await store.put('pieces', answer, pieceKey(record, id));
    },
    async known(record, id) {
      if (record !== undefined) return store.get('pieces', pieceKey(record, id));
      const key = (await store.getAllKeys('pieces')).find((one) => isKeyOf(one, id));
      return key === undefined ? undefined : store.get('pieces', key);
    },
    async allKnown(record) {
      const reading = store.transaction('pieces');
      const [keys, answers] = await Promise.all([reading.store.getAllKeys(), reading.store.getAll()]);
      return ofRecord(record, keys, answers);
    },
  };
}

/** An outbox that lasts as long as the page: for browsers without a store, and for tests. */
export function memoryOutbox(): Outbox {
  const acts = new Map<number, StoredAct>();
  const pieces = new Map<string, PieceAnswer>();
  const counter = { last: 0 };
  return {
    lasting: false,
    all: async () => [...acts].map(([place, stored]) => queued(place, stored)),
    async add(act, record) {
      counter.last += 1;
      acts.set(counter.last, record === undefined ? { act } : { act, record });
      return counter.last;
    },
    async remove(places) {
      for (const place of places) acts.delete(place);
    },
    async know(record, id, answer) {
      pieces.set(pieceKey(record, id), answer);
    },
    known: async (record, id) =>
      record === undefined
        ? [...pieces].find(([key]) => isKeyOf(key, id))?.[1]
        : pieces.get(pieceKey(record, id)),
    allKnown: async (record) => ofRecord(record, [...pieces.keys()], [...pieces.values()]),
  };
}

function queued(place: number, stored: StoredAct | Act): QueuedAct {
  return 'act' in stored
    ? { place, act: stored.act, record: stored.record }
    : { place, act: stored, record: undefined };
}

function pieceKey(record: string | undefined, id: string): string {
  return `${record ?? ''} ${id}`;
}

function ofRecord(
  record: string | undefined,
  keys: readonly string[],
  answers: readonly PieceAnswer[],
): [string, PieceAnswer][] {
  return keys.flatMap((key, index): [string, PieceAnswer][] => {
    const answer = answers[index];
    const [of, id] = [key.slice(0, key.indexOf(' ')), key.slice(key.indexOf(' ') + 1)];
    return answer !== undefined && (record === undefined || of === record) ? [[id, answer]] : [];
  });
}

function isKeyOf(key: string, id: string): boolean {
  return key.endsWith(` ${id}`);
}
