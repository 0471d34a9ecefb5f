import { mostOfObservation } from '../../evidence/readingWeights.ts';
import { capital } from '../../ground/words.ts';
import { readingWords } from '../../piece/readings.ts';
import { demonstratedWords } from '../../weighing/demonstratedWords.ts';
import { ownWords } from '../../weighing/ownWords.ts';
import { type Reason, reasonKey, reasonsOf } from '../../weighing/reasons.ts';
import { type Named, reasonInWords } from '../../weighing/reasonWords.ts';
import { boundsInWords, verbalScale } from '../../weighing/verbalScale.ts';
import { lookedOverId } from '../../weighing/weighObservations.ts';
import { partName } from '../drawer/partName.ts';
import { SignFigures } from '../examination/SignFigures.tsx';
import { type ReadingsContext, signName } from './readingsContext.ts';
import { findingWords, sayDecibans } from './speaksFor.ts';

const shownAtFirst = 6;

/** Every reason in words, those of one cause together; decibans, figures and sources one touch below. */
export function Weights({ context }: { context: ReadingsContext }) {
  const { weighing, knowledge, parts } = context;
  const { forIt, againstIt, limits, neither } = reasonsOf(weighing);
  const [leading, rival] = [
    readingWords[weighing.leading].inSentence,
    readingWords[weighing.rival].inSentence,
  ];
  return (
    <section className="stack-tight">
      <h2>What speaks for and against</h2>
      <p className="soft small">
        For {leading} against all the other readings; beneath each, against its strongest rival, {rival}, as
        well. Findings that share a cause are counted together, once.
      </p>
      <p className="soft small">{demonstratedWords()}</p>
      <ReasonList context={context} title="For it" reasons={forIt} />
      <ReasonList context={context} title="Against it" reasons={againstIt} />
      <ReasonList context={context} title="Without a number" reasons={limits} />
      {neither.length > 0 && (
        <details>
          <summary>Too little either way to count as support, all else taken in ({neither.length})</summary>
          <ReasonList context={context} reasons={neither} />
        </details>
      )}
      {weighing.ignored.length > 0 && (
        <>
          <h3>Not weighed</h3>
          <ul>
            {weighing.ignored.map((each) => (
              <li key={`${each.sign}@${each.part}`}>
                {signName(knowledge, each.sign)}, {capital(partName(parts, each.part))}: {each.why}
              </li>
            ))}
          </ul>
        </>
      )}
      <details>
        <summary>The scale these words are taken from</summary>
        <table className="read-table">
          <caption>
            {verbalScale.name}: the likelihood ratio says how many times more probable the findings are on one
            side than on the other; decibans are ten times its base-ten logarithm
          </caption>
          <thead>
            <tr>
              <th scope="col">Likelihood ratio</th>
              <th scope="col">Decibans</th>
              <th scope="col">Words</th>
            </tr>
          </thead>
          <tbody>
            {verbalScale.bands.map((band) => (
              <tr key={band.words}>
                <td>{boundsInWords(band).ratio}</td>
                <td>{boundsInWords(band).decibans}</td>
                <td>{band.words}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="small soft">
          {verbalScale.standing} A likelihood ratio is not the probability of either side: that hangs on the
          starting odds as well.
        </p>
      </details>
    </section>
  );
}

type ListProps = { context: ReadingsContext; title?: string; reasons: readonly Reason[] };

function ReasonList({ context, title, reasons }: ListProps) {
  if (reasons.length === 0) return null;
  const lines = (some: readonly Reason[]) => (
    <ul className="read-weights">
      {some.map((reason) => (
        <ReasonLine key={reasonKey(reason)} context={context} reason={reason} />
      ))}
    </ul>
  );
  return (
    <>
      {title !== undefined && <h3>{title}</h3>}
      {lines(reasons.slice(0, shownAtFirst))}
      {reasons.length > shownAtFirst && (
        <details>
          <summary>{reasons.length - shownAtFirst} more</summary>
          {lines(reasons.slice(shownAtFirst))}
        </details>
      )}
    </>
  );
}

function ReasonLine({ context, reason }: { context: ReadingsContext; reason: Reason }) {
  const { weighing, knowledge } = context;
  const named = namerOf(context);
  return (
    <li data-own={reason.own}>
      <details>
        <summary>
          {reason.own !== undefined && <span className="mark">your own</span>}{' '}
          <span className="said">{reasonInWords(reason, weighing.leading, named)}.</span>
        </summary>
        <dl className="read-decibans">
          <dt>{reason.cause === undefined ? 'If it were taken out' : 'If all of them were taken out'}</dt>
          <dd>
            {sayDecibans(reason.withinWhole)}: {reason.words}
          </dd>
          <dt>Against {readingWords[weighing.rival].inSentence}</dt>
          <dd>{sayDecibans(reason.againstRival)}</dd>
        </dl>
        {reason.own !== undefined && (
          <p className="small">
            {reason.own === lookedOverId
              ? 'How often nothing is found in each kind of piece stands in the knowledge files, with wide ranges.'
              : `Weighed by how far you would expect it of each kind of piece; it counts at most ${mostOfObservation} to 1.`}
          </p>
        )}
        {reason.findings.map((weight) => {
          const sign = knowledge.signs[weight.sign];
          return (
            <div key={`${weight.sign}@${weight.part}`}>
              <p className="small">
                {named.finding(weight)} by itself: {sayDecibans(weight.alone)}
                {reason.cause === undefined ? '' : `; taken out alone: ${sayDecibans(weight.withinWhole)}`}.
              </p>
              {sign !== undefined && <SignFigures sign={sign} knowledge={knowledge} />}
            </div>
          );
        })}
      </details>
    </li>
  );
}

/** Names a finding with the words of the knowledge and the form, and marks what is the examiner’s own. */
export function namerOf({ knowledge, parts, piece }: ReadingsContext): Named {
  return {
    finding: (weight) =>
      findingWords(signName(knowledge, weight.sign), partName(parts, weight.part), weight.state),
    own: (id) => ownWords(id, piece, 'your'),
  };
}
