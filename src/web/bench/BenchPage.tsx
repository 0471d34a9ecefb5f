import { useLocation, useNavigate } from '@tanstack/react-router';
import { Suspense } from 'react';
import { partsOf } from '../../drawing/partsOf.ts';
import type { Piece } from '../../piece/piece.ts';
import { coverageWords } from '../../units/doubt.ts';
import { recorderOf } from '../examination/recorder.ts';
import { TextPlace } from '../fields/TextPlace.tsx';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import type { BenchContext } from './benchContext.ts';
import { KeptResults } from './KeptResults.tsx';
import { benchTools } from './tools.ts';
import './bench.css';

/** The bench: what measuring can settle. */
export function BenchPage() {
  const used = usePiece(usePieceId());
  return used.piece === undefined ? null : <Bench {...used} piece={used.piece} />;
}

type Ready = Pick<ReturnType<typeof usePiece>, 'readOnly' | 'record'> & { piece: Piece };

function Bench({ piece, readOnly, record }: Ready) {
  const knowledge = useKnowledge();
  usePageTitle('Bench', pieceTitle(piece));
  const navigate = useNavigate();
  const hash = useLocation({ select: (location) => location.hash });
  const form = knowledge.forms[piece.form];
  if (form === undefined)
    return <p>The form “{piece.form}” is not in the knowledge files, so its parts are not known.</p>;
  const context: BenchContext = {
    piece,
    readOnly,
    knowledge,
    form,
    parts: partsOf(form, piece.features),
    record: recorderOf(record, readOnly),
  };
  const open = benchTools.find((tool) => tool.id === hash.split('/')[0]);
  const take = (id: string) =>
    void navigate({ to: '.', hash: id, replace: true, resetScroll: false, hashScrollIntoView: false });
  return (
    <div className="bench">
      <h1 className="unseen">Bench</h1>
      <nav className="bench-tools" aria-label="Tools">
        <ul className="bare-list">
          {benchTools.map((tool) => (
            <li key={tool.id}>
              <button
                type="button"
                className="bench-tool"
                aria-current={tool === open ? 'true' : undefined}
                onClick={() => take(tool.id)}
              >
                <span className="said">{tool.name}</span>
                <span className="soft small">{tool.asks}</span>
              </button>
            </li>
          ))}
        </ul>
      </nav>
      <div className="bench-top stack">
        {open === undefined ? (
          <p className="said">
            The bench settles by measuring what the eye can’t. Choose a tool; what it finds can be entered as
            a finding, weighed by what was measured.
          </p>
        ) : (
          <section className="stack" aria-labelledby="bench-open">
            <h2 id="bench-open">{open.name}</h2>
            <p className="bench-asks soft">{open.asks}</p>
            <Suspense fallback={<p role="status">Laying it out.</p>}>
              <TextPlace name={open.id}>
                <open.Screen key={`${piece.id} ${open.id}`} context={context} />
              </TextPlace>
            </Suspense>
          </section>
        )}
        <KeptResults context={context} />
        <p className="small soft">{coverageWords}</p>
      </div>
    </div>
  );
}
