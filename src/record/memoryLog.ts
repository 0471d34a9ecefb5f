import { randomUUID } from 'node:crypto';
import type { RecordedEvent } from '../piece/event.ts';
import type { EventLog, HistoryPart, PlacedEvent } from './eventLog.ts';
import { recordHead } from './recordHead.ts';

/** A log that lasts as long as the program: for tests and for trying things out. */
export function memoryLog(): EventLog {
  const kept: RecordedEvent[] = [];
  return {
    recordId: randomUUID(),
    append(events) {
      const ids = new Set(kept.map((event) => event.id));
      const places = new Set(kept.map((event) => `${event.seq} ${event.device}`));
      for (const event of events) {
        const place = `${event.seq} ${event.device}`;
        if (ids.has(event.id) || places.has(place))
          throw new Error(`event ${event.id} is in the record already`);
        ids.add(event.id);
        places.add(place);
      }
      kept.push(...structuredClone(events));
      return kept.length - events.length + 1;
    },
    ofPiece(piece, part) {
      const all = kept
        .map((event, index) => ({ position: index + 1, event }))
        .filter((one) => one.event.piece === piece);
      return structuredClone([...partOf(all, part)]);
    },
    count: (piece) => kept.filter((event) => event.piece === piece).length,
    pieces: () => [...new Set(kept.map((event) => event.piece))],
    find: (id) => structuredClone(kept.find((event) => event.id === id)),
    head(device) {
      const last = kept.findLast((event) => event.device === device);
      return last && { seq: last.seq, hash: last.hash };
    },
    at: (device, seq) => structuredClone(kept.find((event) => event.device === device && event.seq === seq)),
    recordHead() {
      const heads = new Map(kept.map((event) => [event.device, event]));
      return recordHead([...heads.values()], kept.length);
    },
    close() {},
  };
}

function partOf(all: readonly PlacedEvent[], part: HistoryPart | undefined): readonly PlacedEvent[] {
  if (part === undefined) return all;
  if ('after' in part) return all.filter(({ position }) => position > part.after).slice(0, part.most);
  const earlier = all.filter(({ position }) => position < part.before);
  return earlier.slice(Math.max(0, earlier.length - part.most));
}
