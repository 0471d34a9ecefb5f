import { Link } from '@tanstack/react-router';
import { revisionsOf } from '../../piece/issued.ts';
import type { Piece } from '../../piece/piece.ts';
import { dayWords } from '../../units/days.ts';

/** Every revision that was signed, the newest first, each with its PDF as it was stored. */
export function Revisions({ piece }: { piece: Piece }) {
  const revisions = revisionsOf(piece).toReversed();
  if (revisions.length === 0) return null;
  return (
    <section className="stack-tight sheet" aria-labelledby="revisions">
      <h2 id="revisions">Signed</h2>
      <ul className="lacking">
        {revisions.map(({ revision, by, on, isNew }) => (
          <li key={revision}>
            <a href={revisionAddress(piece.id, revision)} download>
              Save revision {revision} (PDF)
            </a>
            <p className="soft small">
              Signed by {by} on {dayWords(on)}.{isNew === '' ? '' : ` New in it: ${isNew}`}
            </p>
            <Link
              className="small"
              aria-label={`Compare revision ${revision} with the piece as it is now`}
              to="/piece/$id/comparison"
              params={{ id: piece.id }}
              search={{ revision }}
            >
              Compare it with the piece as it is now
            </Link>
          </li>
        ))}
      </ul>
      <p className="soft small">From the stored file, byte for byte: it can be fetched again at any time.</p>
    </section>
  );
}

/** Where the stored PDF of a revision is fetched. */
function revisionAddress(piece: string, revision: number): string {
  return `/api/pieces/${encodeURIComponent(piece)}/issued/${revision}/opinion.pdf`;
}
