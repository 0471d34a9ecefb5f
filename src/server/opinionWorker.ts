import type { Piece } from '../piece/piece.ts';

/** An opinion asked of the thread that sets it. */
export type OpinionQuestion = {
  piece: Piece;
  plates: Record<string, string>;
  yearNow: number;
  today: string;
};
