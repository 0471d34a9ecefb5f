import { readingWords } from '../../piece/readings.ts';
import { outOf, outOfRange } from '../../weighing/probabilityWords.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import type { ReadingsContext } from './readingsContext.ts';

/** The examiner's starting odds, and how the answer moves with them. */
export function StartingOdds({
  context,
  onChoose,
}: {
  context: ReadingsContext;
  onChoose: (odds: string) => void;
}) {
  const { knowledge, weighing, piece, readOnly } = context;
  const { startingOdds, defaultOdds } = knowledge.making;
  const leading = weighing.leading;
  return (
    <section className="stack-tight">
      <h2>Starting odds</h2>
      <ChoiceField
        label="Before anything is looked at, how probable is period work?"
        choices={Object.entries(startingOdds).map(([id, { name, why }]) => ({ id, name, note: why }))}
        value={piece.startingOdds ?? defaultOdds}
        save={onChoose}
        readOnly={readOnly}
      />
      <ul className="stack-tight">
        {weighing.byStartingOdds.map((each) => (
          <li key={each.odds}>
            {startingOdds[each.odds]?.name ?? each.odds}: {readingWords[each.leading].inSentence}{' '}
            <span className="soft small">
              ({outOf(each.probabilities[each.leading] ?? 0)}
              {each.leading === leading
                ? ''
                : `; ${readingWords[leading].inSentence} ${outOf(each.probabilities[leading] ?? 0)}`}
              )
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The figures the answer hangs on most. */
export function Sensitivity({ context, full }: { context: ReadingsContext; full: boolean }) {
  const { sensitivity, leading } = context.weighing;
  return (
    <section className="stack-tight">
      <h2>Which figures it hangs on</h2>
      {sensitivity.length === 0 ? (
        <p className="soft">{full ? 'It hangs on no single figure.' : 'Being worked out.'}</p>
      ) : (
        <details>
          <summary>How the leading reading moves with single figures</summary>
          <p className="small soft">
            Each figure moved alone over its own range; how probable {readingWords[leading].inSentence} then
            is.
          </p>
          <ul className="read-looks">
            {sensitivity.map((each) => (
              <li key={each.figure}>
                {each.figure} <span className="soft small">{outOfRange(each.low, each.high)}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
