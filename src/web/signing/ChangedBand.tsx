import { Link } from '@tanstack/react-router';
import type { Piece } from '../../piece/piece.ts';
import type { UsedPiece } from '../record/usePiece.ts';
import { bandWords } from './bandWords.ts';
import { beginRevision } from './beginRevision.ts';
import { useIssued } from './IssuedProvider.tsx';
import './signing.css';

/** Says on every page of a piece that what was signed no longer says all that the piece says. */
export function ChangedBand({ piece, used }: { piece: Piece; used: UsedPiece }) {
  const band = bandWords(useIssued(), piece.opinion.status);
  if (band === undefined) return null;
  return (
    <aside className="changed-band" aria-label="Changed since it was signed">
      <p>{band.words}</p>
      <div className="row">
        {band.compare ? (
          <Link to="/piece/$id/comparison" params={{ id: piece.id }}>
            Compare
          </Link>
        ) : null}
        {band.can === 'begin' && !used.readOnly ? (
          <button type="button" className="button plain" onClick={() => beginRevision(used)}>
            Begin revision {band.next}
          </button>
        ) : null}
        {band.can === 'sign' ? (
          <Link to="/piece/$id/sign" params={{ id: piece.id }}>
            Review and sign revision {band.next}
          </Link>
        ) : null}
      </div>
    </aside>
  );
}
