import { makingWords } from '../../piece/readings.ts';
import { makingInWords, notConsideredWords, whyNotConsidered } from '../../weighing/makingInWords.ts';
import { oddsInWords } from '../../weighing/oddsInWords.ts';
import {
  noneInWords,
  outOf,
  outOfRange,
  probabilityBand,
  probableWords,
  toldShares,
} from '../../weighing/probabilityWords.ts';
import { type ReadingsContext, wasLooked } from './readingsContext.ts';

/** First: how the piece came to be, from which odds, and whether that is settled. */
export function Making({ context, full }: { context: ReadingsContext; full: boolean }) {
  const { weighing } = context;
  const { making, unexplained } = weighing;
  const looked = wasLooked(weighing);
  return (
    <section className="read-leading" aria-labelledby="making">
      <h2 id="making">How it came to be</h2>
      <p className="read-lead said" data-making={making.leading}>
        {looked
          ? `From ${oddsInWords(context.piece, context.knowledge)} and these findings: ${makingInWords(weighing)}.`
          : 'Nothing has been looked at yet: only the starting odds speak.'}
      </p>
      {unexplained.unexplained && (
        <p className="read-none">
          <strong>{noneInWords(unexplained.probability)}.</strong> {unexplained.reason}
        </p>
      )}
      {looked && (
        <p>
          <strong>
            {making.firm ? 'Settled.' : full ? 'Not settled.' : 'Not yet known whether settled.'}
          </strong>{' '}
          {making.firmness.why}
        </p>
      )}
      <div className="read-scroll">
        <table className="read-table">
          <caption className="unseen">How the piece came to be, and how probable each answer is</caption>
          <thead>
            <tr>
              <th scope="col">It is</th>
              <th scope="col">In words</th>
              <th scope="col">Best</th>
              {full && <th scope="col">{outOf(toldShares.most)} trials</th>}
            </tr>
          </thead>
          <tbody>
            {making.answers.map((answer) => (
              <tr key={answer.id} data-leading={answer.id === making.leading ? '' : undefined}>
                <th scope="row" className="said">
                  {makingWords[answer.id].title}
                </th>
                <td>
                  {answer.considered === false
                    ? notConsideredWords
                    : probabilityBand(answer.probability).words}
                </td>
                <td>{answer.considered === false ? '–' : outOf(answer.probability)}</td>
                {full && <td>{answer.considered === false ? '–' : outOfRange(answer.low, answer.high)}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {making.answers.some(({ considered }) => considered === false) && (
        <p className="small soft">{whyNotConsidered}</p>
      )}
      {looked && !unexplained.unexplained && (
        <p className="small soft">
          Shared out among the answers listed. That something outside the list explains the findings is{' '}
          {probableWords(unexplained.probability)}.
        </p>
      )}
    </section>
  );
}
