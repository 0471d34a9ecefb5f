import { Link } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { lastRevision } from '../../piece/issued.ts';
import type { Piece } from '../../piece/piece.ts';
import type { Comparison } from '../../server/issuedRoutes.ts';
import { dayWords } from '../../units/days.ts';
import { useNameBook } from '../history/useNameBook.ts';
import { askServer } from '../record/pieceServer.ts';
import { usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { comparisonLists } from './comparisonWords.ts';
import { ReadingsThenAndNow } from './ReadingsThenAndNow.tsx';
import './signing.css';

/** The piece as it is beside the revision that was signed last. */
export function ComparisonPage() {
  const used = usePiece(usePieceId());
  const { piece, seq } = used;
  usePageTitle('Comparison', piece === undefined ? '' : pieceTitle(piece));
  const revision = piece === undefined ? undefined : lastRevision(piece)?.revision;
  const { comparison, trouble } = useComparison(piece?.id, revision, seq);
  if (piece === undefined) return null;
  if (revision === undefined)
    return (
      <div className="comparison">
        <h1>Comparison</h1>
        <p>Nothing has been signed with its files yet, so there is nothing to compare with.</p>
      </div>
    );
  if (comparison === undefined)
    return (
      <div className="comparison">
        <h1>Since revision {revision}</h1>
        <p role="status">{trouble === '' ? 'Comparing…' : trouble}</p>
      </div>
    );
  return <Compared piece={piece} comparison={comparison} />;
}

function Compared({ piece, comparison }: { piece: Piece; comparison: Comparison }) {
  const names = useNameBook(piece);
  const last = lastRevision(piece);
  const lists = comparisonLists(comparison.piece, names);
  const { program, knowledge, figuresMoved, acts } = comparison;
  return (
    <div className="comparison">
      <h1>Since revision {last?.revision}</h1>
      <p className="said">
        Signed by {last?.by} on {dayWords(last?.on ?? '')}.{' '}
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
          {figuresMoved
            ? 'The findings as they were signed come to other figures now.'
            : 'The findings as they were signed come to the same figures now.'}
        </p>
      </section>
      <ReadingsThenAndNow comparison={comparison} />
      <p>
        <Link to="/piece/$id/opinion" params={{ id: piece.id }}>
          To the opinion
        </Link>
      </p>
    </div>
  );
}

/** The comparison with one revision, asked for again whenever the record has moved on. */
function useComparison(id: string | undefined, revision: number | undefined, seq: number) {
  const [comparison, setComparison] = useState<Comparison>();
  const [trouble, setTrouble] = useState('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: `seq` is what makes it ask again
  useEffect(() => {
    if (id === undefined || revision === undefined) return;
    const left = { yes: false };
    const at = `/api/pieces/${encodeURIComponent(id)}/issued/${revision}/comparison`;
    void askServer<Comparison>(fetch, at).then((asked) => {
      if (left.yes) return;
      if (asked.came === 'answer') setComparison(asked.answer);
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
  return { comparison, trouble };
}
