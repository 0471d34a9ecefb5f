import type { Piece } from '../../piece/piece.ts';

/** The name a piece goes by on the screens; words in its place where it has none yet. */
export function pieceTitle(piece: Pick<Piece, 'title'>): string {
  return piece.title.trim() === '' ? 'A piece without a name' : piece.title;
}
