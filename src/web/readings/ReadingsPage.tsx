import { usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';

/** The readings of a piece. */
export function ReadingsPage() {
  const { piece } = usePiece(usePieceId());
  usePageTitle('Readings', piece === undefined ? '' : pieceTitle(piece));
  return <h1>Readings</h1>;
}
