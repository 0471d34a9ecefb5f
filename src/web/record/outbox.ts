import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Act, PieceAnswer, QueuedAct } from './act.ts';

/** Where acts wait until the record has them, and what was last known of each piece. */
export type Outbox = {
  /** False where this browser keeps nothing once the tab is closed. */
  lasting: boolean;
  all(): Promise<QueuedAct[]>;
  add(act: Act): Promise<number>;
  remove(places: readonly number[]): Promise<void>;
  /** Keeps the last answer of a piece, so that it opens when the server is gone. */
  know(id: string, answer: PieceAnswer): Promise<void>;
  known(id: string): Promise<PieceAnswer | undefined>;
};

interface OutboxSchema extends DBSchema {
  acts: { key: number; value: Act };
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
      return acts.flatMap((act, index) => {
        const place = places[index];
        return place === undefined ? [] : [{ place, act }];
      });
    },
    add: (act) => store.add('acts', act),
    async remove(places) {
      const writing = store.transaction('acts', 'readwrite');
      await Promise.all([...places.map((place) => writing.store.delete(place)), writing.done]);
    },
    async know(id, answer) {
      await store.put('pieces', answer, id);
    },
    known: (id) => store.get('pieces', id),
  };
}

/** An outbox that lasts as long as the page: for browsers without a store, and for tests. */
export function memoryOutbox(): Outbox {
  const acts = new Map<number, Act>();
  const pieces = new Map<string, PieceAnswer>();
  const counter = { last: 0 };
  return {
    lasting: false,
    all: async () => [...acts].map(([place, act]) => ({ place, act })),
    async add(act) {
      counter.last += 1;
      acts.set(counter.last, act);
      return counter.last;
    },
    async remove(places) {
      for (const place of places) acts.delete(place);
    },
    async know(id, answer) {
      pieces.set(id, answer);
    },
    known: async (id) => pieces.get(id),
  };
}
