import { useMemo, useState } from 'react';
import { worthComparables } from '../../calculations/worthComparables.ts';
import { priceComparable } from '../../piece/worth.ts';
import { comparablesOf } from '../../worth/comparablesOf.ts';
import { faultWords } from '../bench/benchContext.ts';
import { runHere } from '../bench/runHere.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { today } from '../shell/dayWords.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { ComparableEntry } from './ComparableEntry.tsx';
import { Grid } from './Grid.tsx';
import { LaterMoney } from './LaterMoney.tsx';
import { PasteSales } from './PasteSales.tsx';
import type { WorthContext } from './worthContext.ts';

/** Sales of like pieces, each brought to this one with its reasons, and what they say together. */
export function Comparables(context: WorthContext) {
  const { used, piece, readOnly } = context;
  const knowledge = useKnowledge();
  const [added, setAdded] = useState('');
  const { lacking, result } = useMemo(() => {
    const { asked, lacking: left } = comparablesOf(piece);
    const input = {
      subject: pieceTitle(piece),
      comparables: asked.map(({ comparable }) => comparable),
      asOf: piece.engagement.effectiveOn ?? today(),
      basis: piece.worth.basis,
    };
    const found = asked.length === 0 ? undefined : runHere(worthComparables, input, knowledge);
    return { lacking: left, result: found };
  }, [piece, knowledge]);
  const add = () => {
    const id = crypto.randomUUID();
    used.record('comparable-recorded', [{ path: ['comparables', id], to: priceComparable.parse({ id }) }]);
    setAdded(id);
  };
  const sales = Object.values(piece.comparables);
  return (
    <section className="stack" aria-labelledby="comparables">
      <h2 id="comparables">Sales of like pieces</h2>
      <p className="small soft">
        Write the price as it was paid, and whether the buyer’s premium is in it: the premium is never
        guessed. An adjustment raises the sale where its piece was the lesser one, and lowers it where it was
        the better.
      </p>
      {sales.map((each) => (
        <ComparableEntry key={each.id} {...context} comparable={each} isOpen={each.id === added} />
      ))}
      {readOnly ? null : (
        <div className="row">
          <button type="button" className="button" onClick={add}>
            Add a sale
          </button>
          <PasteSales used={used} />
        </div>
      )}
      <LaterMoney />
      {lacking.map(({ id, name, what }) => (
        <p key={id} className="doubt small" role="status">
          {name} is not reckoned with yet: it lacks {what.join(', ')}.
        </p>
      ))}
      {result?.ok === false && (
        <p className="caution" role="alert">
          {faultWords(result.faults)}
        </p>
      )}
      {result?.ok ? <Grid found={result.output} basis={piece.worth.basis} /> : null}
    </section>
  );
}
