import { usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';

/** The examination of a piece. */
export function ExaminationPage() {
  const { piece } = usePiece(usePieceId());
  usePageTitle('Examination', piece === undefined ? '' : pieceTitle(piece));
  return <h1>Examination</h1>;
}
