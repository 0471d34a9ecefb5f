import { Link } from '@tanstack/react-router';
import type { Piece } from '../../piece/piece.ts';
import { type UsedPiece, usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { ByReading } from './ByReading.tsx';
import { Comparables } from './Comparables.tsx';
import { ValueConclusion } from './ValueConclusion.tsx';
import { ValueMeant } from './ValueMeant.tsx';
import type { WorthContext } from './worthContext.ts';
import './worth.css';

/** The worth: which value is meant, what sales say, what each reading would be worth, and what is concluded. */
export function WorthPage() {
  const used = usePiece(usePieceId());
  return used.piece === undefined ? null : <Worth used={used} piece={used.piece} />;
}

function Worth({ used, piece }: { used: UsedPiece; piece: Piece }) {
  usePageTitle('Worth', pieceTitle(piece));
  const context: WorthContext = {
    used,
    piece,
    readOnly: used.readOnly,
    set: (path, to) =>
      used.record('worth-changed', [{ path: ['worth', ...path], ...(to === undefined ? {} : { to }) }]),
  };
  return (
    <div className="worth-page stack">
      <h1>Worth</h1>
      <p className="said">
        Every figure here is yours: Underside knows no price. It does the sums, keeps the reasons beside them,
        and says how much of the worth hangs on the doubt.
      </p>
      <ValueMeant {...context} />
      <Comparables {...context} />
      <ByReading {...context} />
      <ValueConclusion {...context} />
      <p className="small">
        Several heirs and several pieces:{' '}
        <Link to="/piece/$id/bench" params={{ id: piece.id }} hash="division">
          divide an estate at the bench
        </Link>
        .
      </p>
    </div>
  );
}
