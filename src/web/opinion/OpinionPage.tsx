import { hasEvidence } from '../../piece/hasEvidence.ts';
import { lastRevision } from '../../piece/issued.ts';
import { usePiece } from '../record/usePiece.ts';
import { Revisions } from '../signing/Revisions.tsx';
import '../signing/signing.css';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { useWeighing } from '../weigh/useWeighing.ts';
import { Conclusion } from './Conclusion.tsx';
import { OpinionPdf } from './OpinionPdf.tsx';
import { OtherPapers } from './OtherPapers.tsx';
import type { OpinionContext } from './opinionContext.ts';
import { Resolutions } from './Resolutions.tsx';
import { Signature } from './Signature.tsx';
import { WhatFindingsSay } from './WhatFindingsSay.tsx';
import './opinion.css';

/** The examiner's own conclusion, with what the findings say beside it; signed, and set as a PDF. */
export function OpinionPage() {
  const used = usePiece(usePieceId());
  usePageTitle('Opinion', used.piece === undefined ? '' : pieceTitle(used.piece));
  return used.piece === undefined ? null : <Opinion used={used} piece={used.piece} />;
}

function Opinion({ used, piece }: Pick<OpinionContext, 'used' | 'piece'>) {
  const { weighing } = useWeighing(piece, 'looks');
  const signed = piece.opinion.status === 'signed';
  const last = lastRevision(piece);
  const context: OpinionContext = {
    used,
    piece,
    weighing: hasEvidence(piece) ? weighing : undefined,
    locked: signed || used.readOnly,
    set: (field, to) =>
      used.record('opinion-changed', [{ path: ['opinion', field], ...(to === undefined ? {} : { to }) }]),
  };
  return (
    <div className="opinion">
      <div className="opinion-head">
        <h1>Opinion</h1>
        <p className="said">
          {signed ? (
            <>Signed by {piece.opinion.signedBy}. To change a word, begin a new revision below.</>
          ) : (
            <>
              <strong className="draft">DRAFT</strong> The conclusion is yours: the program weighs, you
              decide. Until you sign, every printed page says DRAFT.
            </>
          )}
        </p>
      </div>
      <div className="opinion-says">
        <WhatFindingsSay context={context} />
      </div>
      <div className="opinion-own stack">
        <Conclusion context={context} />
        <Resolutions context={context} />
        <Signature context={context} />
      </div>
      <div className="opinion-pdf">
        <Revisions piece={piece} />
        {signed && last !== undefined ? null : <OpinionPdf context={context} />}
        <OtherPapers context={context} />
      </div>
    </div>
  );
}
