import { type Finding, type FindingState, type Sureness, tellsOfPiece } from '../../piece/finding.ts';

/** The answers to a sign, each with the key that gives it. */
export const answers: readonly [FindingState, string, string][] = [
  ['present', 'Present', 'p'],
  ['absent', 'Absent', 'a'],
  ['could-not-tell', 'Could not tell', 'c'],
  ['does-not-apply', 'Does not apply', 'd'],
];

/** How sure one can be, each with the key that says so. */
export const surenesses: readonly [Sureness, string, string][] = [
  ['plain', 'Plain', '1'],
  ['fairly', 'Fairly sure', '2'],
  ['hint', 'A hint', '3'],
];

type Props = {
  name: string;
  finding: Finding | undefined;
  /** True where nothing can be answered: a photograph can't show the sign. */
  hidden: boolean;
  onAnswer: (state: FindingState) => void;
  onSure: (sure: Sureness) => void;
};

/** Present, absent, could not tell, does not apply: one touch. How sure: a second. */
export function AnswerButtons({ name, finding, hidden, onAnswer, onSure }: Props) {
  return (
    <>
      <fieldset className="exam-answers" aria-label={`${name}: seen?`}>
        {answers.map(([state, words]) => (
          <button
            key={state}
            type="button"
            className="exam-answer"
            aria-pressed={finding?.state === state}
            disabled={hidden}
            onClick={() => onAnswer(state)}
          >
            {words}
          </button>
        ))}
      </fieldset>
      {finding !== undefined && tellsOfPiece(finding.state) && (
        <fieldset className="exam-sure" aria-label={`${name}: how sure?`}>
          {surenesses.map(([how, words]) => (
            <button
              key={how}
              type="button"
              className="exam-answer"
              aria-pressed={finding.sure === how}
              onClick={() => onSure(how)}
            >
              {words}
            </button>
          ))}
        </fieldset>
      )}
    </>
  );
}

/** The answer in words, where it can only be read. */
export function AnswerInWords({ finding }: { finding: Finding | undefined }) {
  if (finding === undefined) return <p className="small soft">Not looked at.</p>;
  const answer = answers.find(([state]) => state === finding.state)?.[1];
  const sure = surenesses.find(([how]) => how === finding.sure)?.[1].toLowerCase();
  return (
    <p>
      <strong>{answer}</strong>
      {tellsOfPiece(finding.state) ? `, ${sure}` : ''}
      {finding.inPhotoOnly ? ', in a photograph only' : ''}.
    </p>
  );
}
