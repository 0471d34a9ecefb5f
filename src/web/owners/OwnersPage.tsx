import { useState } from 'react';
import { provenanceCheck } from '../../calculations/provenanceCheck.ts';
import { owner as ownerSchema } from '../../piece/owner.ts';
import type { Piece } from '../../piece/piece.ts';
import { askedChain, ownersOf } from '../../provenance/ownersOf.ts';
import { faultWords } from '../bench/benchContext.ts';
import { runHere } from '../bench/runHere.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { type UsedPiece, usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { useWeighing } from '../weigh/useWeighing.ts';
import { ChainFindings } from './ChainFindings.tsx';
import { OwnerEntry } from './OwnerEntry.tsx';
import { TimeLine } from './TimeLine.tsx';
import './owners.css';

/** Who had the piece: a chain held against the years it was made, and the statement made from it. */
export function OwnersPage() {
  const used = usePiece(usePieceId());
  return used.piece === undefined ? null : <Owners used={used} piece={used.piece} />;
}

function Owners({ used, piece }: { used: UsedPiece; piece: Piece }) {
  usePageTitle('Owners', pieceTitle(piece));
  const knowledge = useKnowledge();
  const { weighing } = useWeighing(piece, 'looks');
  const [added, setAdded] = useState('');
  const { readOnly } = used;
  const asked = ownersOf(piece);
  const years = weighing?.years;
  const input = askedChain(asked, years?.p90);
  const result = asked.length === 0 ? undefined : runHere(provenanceCheck, input, knowledge);
  const check = result?.ok ? result.output : undefined;
  const order = check?.order.map((at) => asked[at]?.id ?? '') ?? [];
  const rank = (id: string) => (order.includes(id) ? order.indexOf(id) : order.length);
  const listed = Object.values(piece.owners).toSorted((a, b) => rank(a.id) - rank(b.id));
  const add = () => {
    const id = crypto.randomUUID();
    used.record('owner-recorded', [{ path: ['owners', id], to: ownerSchema.parse({ id }) }]);
    setAdded(id);
  };
  return (
    <div className="owners-page stack">
      <h1>Owners</h1>
      <p className="said">
        Who had it, from the maker to the present owner: what is told, and what each thing told is known by. A
        gap is shown, not bridged.
      </p>
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {check === undefined ? null : (
        <>
          <TimeLine owners={listed} years={years} gaps={check.gaps} />
          <ChainFindings check={check} made={input.made} />
        </>
      )}
      <section className="stack-tight" aria-labelledby="owners-list">
        <h2 id="owners-list">The chain</h2>
        {listed.length === 0 ? (
          <p className="soft">
            Nobody is entered yet. Begin with the present owner, or with the earliest that is told of.
          </p>
        ) : (
          listed.map((each) => (
            <OwnerEntry key={each.id} used={used} piece={piece} owner={each} isOpen={each.id === added} />
          ))
        )}
        {readOnly ? null : (
          <p>
            <button type="button" className="button" onClick={add}>
              Add an owner
            </button>
          </p>
        )}
      </section>
      {check === undefined ? null : <Statement parts={check.parts} />}
    </div>
  );
}

function Statement({ parts }: { parts: { text: string; notes: readonly string[]; key: string } }) {
  return (
    <section className="sheet stack-tight owners-statement" aria-labelledby="owners-statement">
      <h2 id="owners-statement">Provenance statement</h2>
      <p className="said">{parts.text}</p>
      <ol className="small">
        {parts.notes.map((note, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a note is known by its number
          <li key={index}>{note}</li>
        ))}
      </ol>
      <p className="small soft">{parts.key}</p>
      <p className="small soft">
        Made from the entries above each time; it is printed in the opinion as it stands here.
      </p>
    </section>
  );
}
