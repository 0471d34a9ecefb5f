import type { Json } from '../../piece/event.ts';
import type { Opinion, Piece } from '../../piece/piece.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import type { UsedPiece } from '../record/usePiece.ts';

/** What the parts of the opinion page share. */
export type OpinionContext = {
  used: UsedPiece;
  piece: Piece;
  /** What the findings say, or undefined where nothing was found or the weighing is not there yet. */
  weighing: Weighing | undefined;
  /** True where nothing may be changed: signed, or an example. */
  locked: boolean;
  set: (field: keyof Opinion, to: Json | undefined) => void;
};

/** Whether the examiner concludes on another reading than the findings lead to. */
export function departs({ piece, weighing }: Pick<OpinionContext, 'piece' | 'weighing'>): boolean {
  return (
    weighing !== undefined &&
    piece.opinion.reading !== undefined &&
    piece.opinion.reading !== weighing.leading
  );
}
