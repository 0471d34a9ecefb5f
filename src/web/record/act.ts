import type { DraftEvent } from '../../piece/event.ts';

/** Taking back the last act, or bringing it back: the server knows which that is. */
export type Reversal = { id: string; device: string; who: string; at: string };

/** One thing done on this device that the record must have. */
export type Act =
  | { type: 'event'; piece: string; event: DraftEvent }
  | { type: 'undo' | 'redo'; piece: string; reversal: Reversal };

/** An act with its place in the line, as the outbox keeps it. */
export type QueuedAct = { place: number; act: Act };

/** What the server answers of a piece. */
export type PieceAnswer = {
  piece: unknown;
  seq: number;
  canUndo: boolean;
  canRedo: boolean;
  readOnly?: boolean;
};

/** The id of an act, made on this device. */
export function actId(act: Act): string {
  return act.type === 'event' ? act.event.id : act.reversal.id;
}
