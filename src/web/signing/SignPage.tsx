import { Link } from '@tanstack/react-router';
import { lastRevision } from '../../piece/issued.ts';
import { usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { Revisions } from './Revisions.tsx';
import { SigningSheet } from './SigningSheet.tsx';
import './signing.css';

/** The one sheet before signing; and after it, what was signed. */
export function SignPage() {
  const used = usePiece(usePieceId());
  const { piece } = used;
  usePageTitle('Sign', piece === undefined ? '' : pieceTitle(piece));
  if (piece === undefined) return null;
  const last = lastRevision(piece);
  if (used.readOnly)
    return (
      <div className="signing">
        <h1>Sign</h1>
        <p>
          {piece.example
            ? 'An example can be read, not signed. Make a copy to edit, and sign that.'
            : 'This record is open read-only: nothing can be signed in it.'}
        </p>
      </div>
    );
  if (piece.opinion.status === 'draft') return <SigningSheet used={used} piece={piece} />;
  return (
    <div className="signing">
      <h1>
        {last === undefined ? 'Signed before revisions were kept' : `Revision ${last.revision} is signed`}
      </h1>
      <Revisions piece={piece} />
      <p>
        <Link to="/piece/$id/opinion" params={{ id: piece.id }}>
          Back to the opinion
        </Link>
      </p>
    </div>
  );
}
