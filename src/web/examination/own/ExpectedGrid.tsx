import { useId } from 'react';
import { capital } from '../../../ground/words.ts';
import {
  type ExpectedWord,
  expectedWords,
  type Observation,
  type PieceHistory,
  pieceHistories,
} from '../../../piece/observation.ts';
import { expectedInWords, historyWords, saysNothing } from '../../../piece/observationWords.ts';

type Expected = Observation['expected'];
type Props = { expected: Expected; onChange: (expected: Expected) => void };

/** How far it would be expected of each kind of piece: six rows of five words, each row one choice. */
export function ExpectedGrid({ expected, onChange }: Props) {
  return (
    <fieldset className="own-grid">
      <legend>How often would you expect to see this on such a piece, if it is …</legend>
      {pieceHistories.map((history) => (
        <Row
          key={history}
          history={history}
          chosen={expected[history]}
          onChoose={(word) => onChange({ ...expected, [history]: word })}
        />
      ))}
      <p className="small" role="status">
        {saysNothing(expected) ? (
          <span className="exam-doubt">
            All six are the same, so it weighs nothing. Choose another word where you would expect it more, or
            less.
          </span>
        ) : (
          `${capital(expectedInWords(expected))}.`
        )}
      </p>
    </fieldset>
  );
}

type RowProps = { history: PieceHistory; chosen: ExpectedWord; onChoose: (word: ExpectedWord) => void };

function Row({ history, chosen, onChoose }: RowProps) {
  const name = useId();
  return (
    <div className="own-row" role="radiogroup" aria-labelledby={`${name}-kind`}>
      <span id={`${name}-kind`} className="own-kind">
        {historyWords[history].title}
      </span>
      <span className="own-words">
        {expectedWords.map((word) => (
          <label key={word} className="own-word">
            <input type="radio" name={name} checked={chosen === word} onChange={() => onChoose(word)} />
            <span>{word}</span>
          </label>
        ))}
      </span>
    </div>
  );
}

/** The same in words, where it can only be read. */
export function ExpectedInWords({ expected }: { expected: Expected }) {
  return (
    <dl className="own-read">
      {pieceHistories.map((history) => (
        <div key={history}>
          <dt>{historyWords[history].title}</dt>
          <dd>{expected[history]}</dd>
        </div>
      ))}
    </dl>
  );
}
