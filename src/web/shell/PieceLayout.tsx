import { Link, Outlet, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { hostWords } from '../offline/hostWords.ts';
import { copyPiece } from '../pieces/copyPiece.ts';
import { usePiece } from '../record/usePiece.ts';
import { useReadOnly } from '../record/useReadOnly.ts';
import { ChangedBand } from '../signing/ChangedBand.tsx';
import { IssuedProvider } from '../signing/IssuedProvider.tsx';
import { Kept } from './Kept.tsx';
import { Notice } from './Notice.tsx';
import { OverwrittenNotice } from './OverwrittenNotice.tsx';
import { PieceNav } from './PieceNav.tsx';
import { pieceTitle } from './pieceTitle.ts';
import { usePieceId } from './usePieceId.ts';
import { useUndoKeys } from './useUndoKeys.ts';

/** A piece: its name, whether all is kept, its pages, and the one that is open. */
export function PieceLayout() {
  const id = usePieceId();
  const used = usePiece(id);
  const { forms } = useKnowledge();
  useUndoKeys(used.undo, used.redo);

  if (used.state === 'loading') {
    return (
      <Notice
        title={used.trouble ? 'This piece is not on this device' : 'Fetching the piece'}
        {...(used.trouble
          ? {
              words: `It was never opened here, and Underside ${hostWords(location.hostname)} can’t be reached. This page tries again by itself every few seconds.`,
            }
          : {})}
      />
    );
  }
  if (used.state === 'damaged')
    return (
      <Notice title="This piece can’t be shown" words={used.damage}>
        <Link to="/">Back to the pieces</Link>
      </Notice>
    );
  if (used.state === 'missing' || used.piece === undefined) {
    return (
      <Notice title="No such piece" words="The record on this machine has no piece under this address.">
        <Link to="/">Back to the pieces</Link>
      </Notice>
    );
  }
  const form = forms[used.piece.form]?.name ?? used.piece.form;
  return (
    <IssuedProvider id={id} seq={used.seq}>
      <div className="piece-page">
        <div className="piece-top">
          <div className="piece-line">
            <Link to="/" className="piece-back" aria-label="Back to the pieces">
              ‹
            </Link>
            <div className="piece-who">
              <span className="piece-name">{pieceTitle(used.piece)}</span>{' '}
              <span className="piece-form soft small">
                {form}
                {used.piece.mode === 'photo-only' ? ', from photographs only' : ''}
              </span>
            </div>
            <Kept used={used} />
          </div>
          {used.piece.example ? <ExampleWords id={id} /> : null}
          <ChangedBand piece={used.piece} used={used} />
        </div>
        <OverwrittenNotice used={used} piece={used.piece} />
        <PieceNav id={id} />
        <div className="piece-body">
          <Outlet />
        </div>
      </div>
    </IssuedProvider>
  );
}

function ExampleWords({ id }: { id: string }) {
  const navigate = useNavigate();
  const readOnly = useReadOnly() !== null;
  const [words, setWords] = useState('');
  const makeMine = async () => {
    const copied = await copyPiece(id);
    if (copied.came === 'answer') {
      void navigate({ to: '/piece/$id/examination', params: { id: copied.answer.id } });
    } else {
      setWords(
        copied.came === 'refusal'
          ? copied.message
          : `Can’t reach Underside ${hostWords(location.hostname)}. Try again in a moment.`,
      );
    }
  };
  return (
    <div className="row">
      <p className="small">
        An invented example: the piece, its people and its story are made up. It can be read, not changed.
      </p>
      {readOnly ? null : (
        <button type="button" className="button quiet" onClick={() => void makeMine()}>
          Make a copy to edit
        </button>
      )}
      {words === '' ? null : (
        <p className="doubt" role="alert">
          {words}
        </p>
      )}
    </div>
  );
}
