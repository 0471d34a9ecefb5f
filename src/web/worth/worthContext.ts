import type { Json } from '../../piece/event.ts';
import type { Piece } from '../../piece/piece.ts';
import type { UsedPiece } from '../record/usePiece.ts';

/** What every section of the worth is handed. */
export type WorthContext = {
  used: UsedPiece;
  piece: Piece;
  readOnly: boolean;
  /** Sets a place below `worth`; without a value it is emptied. */
  set: (path: readonly string[], to: Json | undefined) => void;
};
