import { Link } from '@tanstack/react-router';
import { lastRevision } from '../../piece/issued.ts';
import { dayWords } from '../../units/days.ts';
import { beginRevision } from '../signing/beginRevision.ts';
import type { OpinionContext } from './opinionContext.ts';

/** The way to the sheet that is signed; or who signed, and how a next revision is begun. */
export function Signature({ context }: { context: OpinionContext }) {
  const { piece, used } = context;
  if (used.readOnly) return null;
  const last = lastRevision(piece);
  if (piece.opinion.status === 'draft')
    return (
      <section className="stack" aria-labelledby="signature">
        <h2 id="signature">Signature</h2>
        <p>
          One sheet shows what will be printed and what is missing. Once it is signed, the revision is kept as
          it is, with all it rests on.
        </p>
        <div className="row">
          <Link className="button" to="/piece/$id/sign" params={{ id: piece.id }}>
            Review and sign revision {(last?.revision ?? 0) + 1}
          </Link>
        </div>
      </section>
    );
  return last === undefined ? <SignedBefore context={context} /> : <Signed context={context} />;
}

function Signed({ context }: { context: OpinionContext }) {
  const { piece, used } = context;
  const last = lastRevision(piece);
  if (last === undefined) return null;
  return (
    <section className="stack" aria-labelledby="signature">
      <h2 id="signature">Signature</h2>
      <p className="said">
        Revision {last.revision}, signed by {last.by} on {dayWords(last.on)}.
      </p>
      <div className="row">
        <button type="button" className="button quiet" onClick={() => beginRevision(used)}>
          Begin revision {last.revision + 1}
        </button>
        <span className="soft small">Revision {last.revision} stays as it was signed.</span>
      </div>
    </section>
  );
}

/** A signature from a time in which nothing was kept with it. */
function SignedBefore({ context }: { context: OpinionContext }) {
  const { opinion } = context.piece;
  return (
    <section className="stack" aria-labelledby="signature">
      <h2 id="signature">Signature</h2>
      <p className="said">
        Signed by {opinion.signedBy}
        {opinion.signedOn === undefined ? '' : ` on ${dayWords(opinion.signedOn)}`}, before revisions were
        kept.
      </p>
      <p className="caution">
        Nothing was stored with this signature: what the program prints now may differ from what was signed,
        and is marked as a draft. Keep the paper or file you gave out. To sign with all it rests on, open it
        again as a draft.
      </p>
      <div className="row">
        <button
          type="button"
          className="button quiet"
          onClick={() =>
            context.used.record('opinion-signed', [
              { path: ['opinion', 'status'], to: 'draft' },
              { path: ['opinion', 'signedBy'], to: '' },
              { path: ['opinion', 'signedOn'] },
            ])
          }
        >
          Open again as a draft
        </button>
      </div>
    </section>
  );
}
