import { oddsInWords } from '../../evidence/oddsInWords.ts';
import {
  outOf,
  outOfRange,
  probabilityBand,
  probabilityScaleWords,
  toldShares,
} from '../../evidence/probabilityWords.ts';
import { type Reason, reasonsOf } from '../../evidence/reasons.ts';
import { reasonInWords } from '../../evidence/reasonWords.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { readingWords } from '../../piece/readings.ts';
import type { ReadRoom } from './readRoom.ts';
import { keyOf, namerOf } from './Weights.tsx';

/** The leading reading in a sentence, what it rests on, how settled it is, and the other readings. */
export function Leading({ room, full }: { room: ReadRoom; full: boolean }) {
  const { weighing } = room;
  const leading = weighing.readings.find((each) => each.id === weighing.leading);
  const looked = weighing.weights.length > 0;
  const { forIt, againstIt, limits } = reasonsOf(weighing);
  return (
    <section className="read-leading">
      <p className="read-lead said" data-leading={weighing.leading}>
        {looked
          ? `From ${oddsInWords(room.piece, room.knowledge)} and these findings: ${inSentence(probabilityBand(leading?.probability ?? 0).adverb)} ${readingWords[weighing.leading].inSentence}.`
          : 'Nothing has been looked at yet: only the starting odds speak.'}
      </p>
      {weighing.unexplained.unexplained && (
        <p className="read-none">
          <strong>None of these readings explains the findings.</strong> {weighing.unexplained.reason}
        </p>
      )}
      {looked && (
        <p>
          <strong>
            {weighing.firm ? 'Settled.' : full ? 'Not settled.' : 'Not yet known whether settled.'}
          </strong>{' '}
          {weighing.firmness.why}
        </p>
      )}
      <Reasons room={room} title="It rests most on" reasons={forIt.slice(0, 4)} />
      <Reasons room={room} title="Against it" reasons={againstIt.slice(0, 2)} />
      <Reasons room={room} title="Without a number" reasons={limits.slice(0, 2)} />
      <h2>The readings</h2>
      <ol className="read-list">
        {weighing.readings.map((reading) => (
          <li key={reading.id} data-leading={reading.id === weighing.leading ? '' : undefined}>
            <span className="said">{readingWords[reading.id].title}</span>
            <span className="soft">{probabilityBand(reading.probability).words}</span>
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
                  <td>{outOf(reading.probability)}</td>
                  {full && <td>{outOfRange(reading.low, reading.high)}</td>}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <p className="small soft">
          The figures in the knowledge files are judgments with ranges; they carry no more than 999 in 1000.
          The words: {probabilityScaleWords()}.
        </p>
      </details>
    </section>
  );
}

type ReasonsProps = { room: ReadRoom; title: string; reasons: readonly Reason[] };

function Reasons({ room, title, reasons }: ReasonsProps) {
  if (reasons.length === 0) return null;
  const named = namerOf(room);
  return (
    <div>
      <h2 className="read-small-title">{title}</h2>
      <ul className="read-reasons said">
        {reasons.map((reason) => (
          <li key={keyOf(reason)}>{reasonInWords(reason, room.weighing.leading, named)}.</li>
        ))}
      </ul>
    </div>
  );
}
