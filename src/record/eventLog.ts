import type { RecordedEvent } from '../piece/event.ts';
import type { Head } from './chain.ts';
import type { RecordHead } from './recordHead.ts';

/** An event and its place in the whole record. */
export type PlacedEvent = { position: number; event: RecordedEvent };

/** The first `most` events after a place, or the last `most` before one. */
export type HistoryPart = { after: number; most: number } | { before: number; most: number };

/**
 * The edge between the record and what keeps it: events in one order, added to and never changed.
 * Every implementation passes test/contract/eventLog.contract.ts.
 */
export type EventLog = {
  /** The id of the record, made once; empty for a record of the first version that is only looked at. */
  readonly recordId: string;
  /**
   * Adds events, all or none, and returns only when they would outlive a loss of power. Throws when it could not.
   * @returns the place of the first of them in the whole record; the others follow it without a gap
   */
  append(events: readonly RecordedEvent[]): number;
  /** The events of one piece, oldest first, each with its place in the whole record (1, 2, 3 …); all, or a part. */
  ofPiece(piece: string, part?: HistoryPart): PlacedEvent[];
  /** How many events a piece has. */
  count(piece: string): number;
  /** The ids of all pieces that have events, in the order in which they were opened. */
  pieces(): string[];
  find(id: string): RecordedEvent | undefined;
  /** Where a device's chain stands, or undefined for a device not heard of. */
  head(device: string): Head | undefined;
  /** The act of a device under a number, or undefined where it has none. */
  at(device: string, seq: number): RecordedEvent | undefined;
  /** Where the whole record stands. */
  recordHead(): RecordHead;
  close(): void;
};
