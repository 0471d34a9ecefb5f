import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { type IssuedRevision, lastRevision, revisionsOf } from '../../piece/issued.ts';
import type { Piece } from '../../piece/piece.ts';
import type { Comparison } from '../../server/issuedRoutes.ts';
import { dayWords } from '../../units/days.ts';
import { PickField } from '../fields/PickField.tsx';
import { useNameBook } from '../history/useNameBook.ts';
import { askServer } from '../record/pieceServer.ts';
import { usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { comparisonLists } from './comparisonWords.ts';
import { ReadingsThenAndNow } from './ReadingsThenAndNow.tsx';
import './signing.css';

/** The piece as it is beside a revision of it: the last one, or an earlier one that is chosen. */
export function ComparisonPage() {
  const used = usePiece(usePieceId());
  const { piece, seq } = used;
  usePageTitle('Comparison', piece === undefined ? '' : pieceTitle(piece));
  const { revision: chosen } = useSearch({ from: '/piece/$id/comparison' });
  const issued = piece === undefined || chosen === undefined ? undefined : piece.issued[String(chosen)];
  const since = issued ?? (piece === undefined ? undefined : lastRevision(piece));
  const { comparison, trouble } = useComparison(piece?.id, since?.revision, seq);
  if (piece === undefined) return null;
  if (since === undefined)
    return (
      <div className="comparison">
        <h1>Comparison</h1>
        <p>Nothing has been signed with its files yet, so there is nothing to compare with.</p>
      </div>
    );
  return (
    <div className="comparison">
      <h1>Since revision {since.revision}</h1>
      <WhichRevision piece={piece} since={since} />
      {comparison === undefined ? (
        <p role="status">{trouble === '' ? 'Comparing…' : trouble}</p>
      ) : (
        <Compared piece={piece} since={since} comparison={comparison} />
      )}
    </div>
  );
}

/** Which revision the piece is held against, where there is more than one. */
function WhichRevision({ piece, since }: { piece: Piece; since: IssuedRevision }) {
  const navigate = useNavigate();
  const revisions = revisionsOf(piece).toReversed();
  if (revisions.length < 2) return null;
  return (
    <PickField
      label="Compare with"
      options={revisions.map(({ revision, on }) => ({
        id: String(revision),
        name: `Revision ${revision}, ${dayWords(on)}`,
      }))}
      value={String(since.revision)}
      onPick={(id) =>
        void navigate({
          to: '/piece/$id/comparison',
          params: { id: piece.id },
          search: { revision: Number(id) },
          replace: true,
        })
      }
    />
  );
}

type ComparedProps = { piece: Piece; since: IssuedRevision; comparison: Comparison };

function Compared({ piece, since, comparison }: ComparedProps) {
  const names = useNameBook(piece);
  const lists = comparisonLists(comparison.piece, names);
  const { program, knowledge, readingsMoved, acts } = comparison;
  return (
    <>
      <p className="said">
        Signed by {since.by} on {dayWords(since.on)}.{' '}
        {comparison.piece.same
          ? 'The piece says what it said then.'
          : `${acts === 1 ? 'One act has' : `${acts} acts have`} been recorded since.`}
      </p>
      {lists.map(({ title, items }) => (
        <section key={title} className="stack-tight">
          <h2>{title}</h2>
          <ul>
            {items.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </section>
      ))}
      <section className="stack-tight">
        <h2>Program and knowledge</h2>
        <p>
          Program {program.changed ? `${program.was} then, ${program.now} now` : `${program.now}, as then`}.
          Knowledge{' '}
          {knowledge.changed
            ? `${knowledge.was} then; it holds other entries now (${knowledge.now})`
            : `${knowledge.now}, as then`}
          .{' '}
          {readingsMoved
            ? 'The findings as they were signed come to other readings or years now.'
            : 'The findings as they were signed come to the same readings and years now, as they are printed.'}
        </p>
      </section>
      <ReadingsThenAndNow comparison={comparison} />
      <p>
        <Link to="/piece/$id/opinion" params={{ id: piece.id }}>
          To the opinion
        </Link>
      </p>
    </>
  );
}

/** The comparison with one revision, asked for again whenever the record has moved on. */
function useComparison(id: string | undefined, revision: number | undefined, seq: number) {
  const [told, setTold] = useState<{ revision: number; comparison: Comparison }>();
  const [trouble, setTrouble] = useState('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: `seq` is what makes it ask again
  useEffect(() => {
    if (id === undefined || revision === undefined) return;
    const left = { yes: false };
    const at = `/api/pieces/${encodeURIComponent(id)}/issued/${revision}/comparison`;
    void askServer<Comparison>(fetch, at).then((asked) => {
      if (left.yes) return;
      if (asked.came === 'answer') setTold({ revision, comparison: asked.answer });
      setTrouble(
        asked.came === 'answer'
          ? ''
          : asked.came === 'refusal'
            ? asked.message
            : 'Can’t reach Underside on this computer. Try again in a moment.',
      );
    });
    return () => {
      left.yes = true;
    };
  }, [id, revision, seq]);
  // What was told of another revision is not shown as this one's.
  return { comparison: told?.revision === revision ? told?.comparison : undefined, trouble };
}
