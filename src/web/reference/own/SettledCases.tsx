import { Link } from '@tanstack/react-router';
import { useCallback, useEffect, useState } from 'react';
import { fewestCases } from '../../../learning/standing.ts';
import { makingKinds, makingWords, readingsOfMaking, readingWords } from '../../../piece/readings.ts';
import type { ListedCase, SettledAnswer } from '../../../server/settledRoutes.ts';
import { dayWords } from '../../../units/days.ts';
import { useKnowledgeAnew } from '../../knowledge/useKnowledge.ts';
import { useJob } from '../../opinion/useJob.ts';
import type { Asked } from '../../record/pieceServer.ts';
import { leaveOut, listSettled, reckonAt, switchLearned } from './settledServer.ts';

/** One’s own settled cases: what each counts, how figures learned from them foretold, and the switch. */
export function SettledCases({ readOnly }: { readOnly: boolean }) {
  const anew = useKnowledgeAnew();
  const [answer, setAnswer] = useState<SettledAnswer>();
  const [trouble, setTrouble] = useState('');
  const { job, begin } = useJob(reckonAt, 'The cases could not be reckoned:');
  const take = useCallback((asked: Asked<SettledAnswer>) => {
    if (asked.came === 'answer') setAnswer(asked.answer);
    setTrouble(
      asked.came === 'answer'
        ? ''
        : asked.came === 'refusal'
          ? asked.message
          : 'Can’t reach Underside on this computer. Is it still running?',
    );
  }, []);
  useEffect(() => void listSettled().then(take), [take]);
  if (answer === undefined) return trouble === '' ? null : <p role="alert">{trouble}</p>;
  const act = async (asked: Promise<Asked<SettledAnswer>>) => {
    take(await asked);
    await anew();
  };
  const reckon = async () => {
    const ended = await begin({});
    if (ended?.stands === 'failed') setTrouble(ended.message);
    else await act(listSettled());
  };
  const running = job.stands === 'running';
  return (
    <section className="stack-tight" aria-labelledby="settled-cases">
      <h2 id="settled-cases">Settled cases</h2>
      <p className="small">
        Where it came out what a piece is (its Engagement page says how), the case can teach the figures of
        the signs. Learned figures are off until they have foretold at least {fewestCases} of your cases
        better than the figures as they are.
      </p>
      {answer.fault === undefined ? null : (
        <p className="caution" role="alert">
          {answer.fault}
        </p>
      )}
      {answer.cases.length === 0 ? (
        <p className="soft">None yet.</p>
      ) : (
        <>
          <ul className="bare-list own-list">
            {answer.cases.map((one) => (
              <SettledEntry
                key={one.piece}
                one={one}
                readOnly={readOnly || running}
                leave={(out) => void act(leaveOut(one.piece, out))}
              />
            ))}
          </ul>
          <p role="status">
            {running
              ? `Reckoning: ${job.step}.`
              : answer.isCurrent
                ? answer.standing.words
                : 'Not reckoned yet, or something changed since: until it is reckoned again, learned figures are not used.'}
          </p>
          {answer.isCurrent && answer.standing.fixedBits !== undefined ? <Scores answer={answer} /> : null}
          {readOnly ? null : (
            <>
              {answer.isCurrent ? null : (
                <p>
                  <button type="button" className="button" disabled={running} onClick={() => void reckon()}>
                    Reckon the settled cases
                  </button>
                </p>
              )}
              <label className="choice">
                <input
                  type="checkbox"
                  checked={answer.on}
                  disabled={running || (!answer.on && !(answer.isCurrent && answer.standing.mayUse))}
                  onChange={(event) => void act(switchLearned(event.target.checked))}
                />
                Weigh with the figures learned from these cases
              </label>
            </>
          )}
          <p className="small">
            {answer.inUse
              ? 'In use: every weighing now says so, and a signed revision keeps what it was made with.'
              : answer.on
                ? 'Switched on, but not in use: see above.'
                : 'Off: figures are weighed as they are.'}
          </p>
        </>
      )}
      <p role="alert" className="doubt">
        {trouble}
      </p>
    </section>
  );
}

type SettledEntryProps = { one: ListedCase; readOnly: boolean; leave: (out: boolean) => void };

function SettledEntry({ one, readOnly, leave }: SettledEntryProps) {
  const name = one.title === '' ? 'A piece without a name' : one.title;
  return (
    <li>
      <span>
        <Link to="/piece/$id/engagement" params={{ id: one.piece }}>
          {name}
        </Link>
        : {verdictWords(one)}, {dayWords(one.on)};{' '}
        {one.leftOut
          ? 'left out'
          : `counts ${one.weight === 1 ? 'whole' : 'half'}${one.counted === undefined ? '' : `, and teaches as much as ${one.counted.toFixed(1)} looks`}`}
      </span>
      {readOnly ? null : (
        <button
          type="button"
          className="button plain"
          aria-label={`${one.leftOut ? 'Put back' : 'Leave out'}: ${name}`}
          onClick={() => leave(!one.leftOut)}
        >
          {one.leftOut ? 'Put back' : 'Leave out'}
        </button>
      )}
    </li>
  );
}

function verdictWords({ verdict }: ListedCase): string {
  const [only] = verdict;
  if (verdict.length === 1 && only !== undefined) return readingWords[only].inSentence;
  const making = makingKinds.find((kind) => readingsOfMaking[kind].join() === verdict.join());
  return making === undefined ? 'open' : makingWords[making].inSentence;
}

function Scores({ answer }: { answer: SettledAnswer }) {
  const told = answer.cases.filter((one) => one.fixedBits !== undefined && one.learnedBits !== undefined);
  return (
    <table className="settled-scores">
      <caption className="small">
        How far each verdict surprised, in bits: 0 would be foreseen for certain, 1 held for one in two, 2 for
        one in four. Each case was foretold before it was learned from.
      </caption>
      <thead>
        <tr>
          <th scope="col">Case</th>
          <th scope="col">Figures as they are</th>
          <th scope="col">Learned</th>
        </tr>
      </thead>
      <tbody>
        {told.map((one) => (
          <tr key={one.piece}>
            <th scope="row">{one.title === '' ? 'A piece without a name' : one.title}</th>
            <td>{one.fixedBits?.toFixed(2)}</td>
            <td>{one.learnedBits?.toFixed(2)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">On the mean</th>
          <td>{answer.standing.fixedBits?.toFixed(3)}</td>
          <td>{answer.standing.learnedBits?.toFixed(3)}</td>
        </tr>
      </tbody>
    </table>
  );
}
