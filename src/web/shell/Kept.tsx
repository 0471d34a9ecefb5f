import { counted } from '../../ground/words.ts';
import type { UsedPiece } from '../record/usePiece.ts';

/** Whether all is saved, in words; taking back and bringing back; and what the record would not take. */
export function Kept({ used }: { used: UsedPiece }) {
  if (used.readOnly) return null;
  return (
    <>
      <div className="piece-kept">
        <span className="soft small" role="status" data-long={used.saving === 'waiting' ? '' : undefined}>
          {keptWords(used)}
        </span>
        <button type="button" className="button plain" disabled={!used.canUndo} onClick={used.undo}>
          Undo
        </button>
        <button type="button" className="button plain" disabled={!used.canRedo} onClick={used.redo}>
          Redo
        </button>
        {used.undoStopsAtSignature ? <span className="soft small">Signed: undo stops here.</span> : null}
      </div>
      {used.refusals.length === 0 ? null : (
        <div className="caution" role="alert">
          <p>{used.refusals.join(' ')}</p>
          <button type="button" className="button plain" onClick={used.dismissRefusals}>
            I have read this
          </button>
        </div>
      )}
    </>
  );
}

function keptWords({ saving, waiting, lasting }: UsedPiece): string {
  if (saving === 'saved') return 'Saved';
  if (saving === 'saving') return 'Saving…';
  const entries = counted(waiting, 'entry waits', 'entries wait');
  // Why they wait is said above, on every page.
  return lasting
    ? `${entries} on this device`
    : `${entries} in this page only: leave it open until Underside can be reached`;
}
