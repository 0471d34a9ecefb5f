import { readingWords } from '../../piece/readings.ts';
import { notConsideredWords, whyNotConsidered } from '../../weighing/makingInWords.ts';
import {
  outOf,
  outOfRange,
  probabilityBand,
  probabilityScaleWords,
  toldShares,
} from '../../weighing/probabilityWords.ts';
import { type Reason, reasonKey, reasonsOf } from '../../weighing/reasons.ts';
import { reasonInWords } from '../../weighing/reasonWords.ts';
import { type ReadingsContext, wasLooked } from './readingsContext.ts';
import { namerOf } from './Weights.tsx';

/** The detail beneath making and condition: the seven readings, what the first of them rests on, and whether it is settled. */
export function Leading({ context, full }: { context: ReadingsContext; full: boolean }) {
  const { weighing } = context;
  const { forIt, againstIt, limits } = reasonsOf(weighing);
  const leading = weighing.readings.find((each) => each.id === weighing.leading);
  return (
    <section className="read-leading" data-leading={weighing.leading}>
      <h2>Making and condition together: the seven readings</h2>
      {wasLooked(weighing) && (
        <p>
          <span className="said">
            {probabilityBand(leading?.probability ?? 0).adverb} {readingWords[weighing.leading].inSentence}.
          </span>{' '}
          <strong>
            {weighing.firm ? 'Settled.' : full ? 'Not settled.' : 'Not yet known whether settled.'}
          </strong>{' '}
          {weighing.firmness.why}
        </p>
      )}
      <Reasons context={context} title="It rests most on" reasons={forIt.slice(0, 4)} />
      <Reasons context={context} title="Against it" reasons={againstIt.slice(0, 2)} />
      <Reasons context={context} title="Without a number" reasons={limits.slice(0, 2)} />
      <ol className="read-list" aria-label="The seven readings">
        {weighing.readings.map((reading) => (
          <li key={reading.id} data-leading={reading.id === weighing.leading ? '' : undefined}>
            <span className="said">{readingWords[reading.id].title}</span>
            <span className="soft">
              {reading.considered === false ? notConsideredWords : probabilityBand(reading.probability).words}
            </span>
          </li>
        ))}
      </ol>
      <details>
        <summary>Numbers</summary>
        <div className="read-scroll">
          <table className="read-table">
            <caption>
              How probable each reading is
              {full
                ? `, and where ${outOf(toldShares.most)} trials of the ranges leave it`
                : '; the ranges are not tested yet'}
            </caption>
            <thead>
              <tr>
                <th scope="col">Reading</th>
                <th scope="col">Best</th>
                {full && <th scope="col">Trials</th>}
              </tr>
            </thead>
            <tbody>
              {weighing.readings.map((reading) => (
                <tr key={reading.id}>
                  <th scope="row">{readingWords[reading.id].title}</th>
                  <td>{reading.considered === false ? notConsideredWords : outOf(reading.probability)}</td>
                  {full && (
                    <td>{reading.considered === false ? '–' : outOfRange(reading.low, reading.high)}</td>
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <p className="small soft">
          The figures in the knowledge files are judgments with ranges; they carry no more than 999 in 1000.
          The words: {probabilityScaleWords()}.
        </p>
        {weighing.readings.some(({ considered }) => considered === false) && (
          <p className="small soft">{whyNotConsidered}</p>
        )}
      </details>
    </section>
  );
}

type ReasonsProps = { context: ReadingsContext; title: string; reasons: readonly Reason[] };

function Reasons({ context, title, reasons }: ReasonsProps) {
  if (reasons.length === 0) return null;
  const named = namerOf(context);
  return (
    <div>
      <h3 className="read-small-title">{title}</h3>
      <ul className="read-reasons said">
        {reasons.map((reason) => (
          <li key={reasonKey(reason)}>{reasonInWords(reason, context.weighing.leading, named)}.</li>
        ))}
      </ul>
    </div>
  );
}
