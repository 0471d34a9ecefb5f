import type { DraftEvent } from '../../piece/event.ts';
import type { Overwritten } from '../../piece/overwritten.ts';

/** Taking back an act, or bringing it back: `of` is the act that the page showed as the last. */
export type Reversal = { id: string; device: string; who: string; at: string; of?: string };

/** One thing done on this device that the record must have. */
export type Act =
  | { type: 'event'; piece: string; event: DraftEvent }
  | { type: 'undo' | 'redo'; piece: string; reversal: Reversal };

/** An act with its place in the line, as the outbox keeps it, and the record it was made for where that is known. */
export type QueuedAct = { place: number; act: Act; record: string | undefined };

/** What the server answers of a piece. */
export type PieceAnswer = {
  piece: unknown;
  seq: number;
  /** How many acts the record has on the piece. */
  count?: number;
  canUndo: boolean;
  canRedo: boolean;
  readOnly?: boolean;
  /** The act that an undo would take back, and the one that a redo would bring back. */
  undoes?: ActMark;
  redoes?: ActMark;
  /** Values that were written over unseen, and wait for an examiner. */
  overwritten?: readonly Overwritten[];
  /** Why nothing can be taken back where nothing can. */
  undoStopsAt?: 'opening' | 'signature';
};

/** Which act, and whose. */
export type ActMark = { id: string; who: string; device: string; at: string };

/** The id of an act, made on this device. */
export function actId(act: Act): string {
  return act.type === 'event' ? act.event.id : act.reversal.id;
}
