import { verbalScale, weightWords } from '../../evidence/verbalScale.ts';
import { readingWords } from '../../piece/readings.ts';
import { capital, partName } from '../examination/examRoom.ts';
import { SignFigures } from '../examination/SignFigures.tsx';
import { type ReadRoom, signName } from './readRoom.ts';
import { findingWords, heaviestFirst, sayDecibans, sidesOf, speaksAltogether } from './speaksFor.ts';

const shownAtFirst = 6;

/** What each finding does, in words; its decibans, figures and sources one touch below. */
export function Weights({ room }: { room: ReadRoom }) {
  const { weighing, knowledge, parts } = room;
  const all = heaviestFirst(weighing.weights, 'alone');
  const lines = (weights: typeof all) =>
    weights.map((weight) => {
      const sign = knowledge.signs[weight.sign];
      return (
        <li key={`${weight.sign}@${weight.part}`}>
          <details>
            <summary>
              <span className="said">
                {findingWords(signName(knowledge, weight.sign), partName(parts, weight.part), weight.state)}{' '}
                {speaksAltogether(weight, weighing.leading)}.
              </span>
            </summary>
            <dl className="read-decibans">
              <dt>By itself</dt>
              <dd>
                {sayDecibans(weight.alone)}
                {weight.alone === null ? '' : `: ${weightWords(weight.alone, ...sidesOf(weighing.leading))}`}
              </dd>
              <dt>If it were taken out of the whole</dt>
              <dd>
                {sayDecibans(weight.withinWhole)}: {weight.words}
              </dd>
              <dt>Against {readingWords[weighing.rival].inSentence}</dt>
              <dd>{sayDecibans(weight.againstRival)}</dd>
            </dl>
            {sign !== undefined && <SignFigures sign={sign} knowledge={knowledge} />}
          </details>
        </li>
      );
    });
  return (
    <section className="stack-tight">
      <h2>What each finding says</h2>
      <ul className="read-weights">{lines(all.slice(0, shownAtFirst))}</ul>
      {all.length > shownAtFirst && (
        <details>
          <summary>The other {all.length - shownAtFirst} findings</summary>
          <ul className="read-weights">{lines(all.slice(shownAtFirst))}</ul>
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
            {verbalScale.name}, in decibans: ten times the base-ten logarithm of the likelihood ratio
          </caption>
          <thead>
            <tr>
              <th scope="col">Decibans</th>
              <th scope="col">Words</th>
            </tr>
          </thead>
          <tbody>
            {verbalScale.bands.map((band) => (
              <tr key={band.words}>
                <td>
                  {band.toDecibans === null
                    ? `${band.fromDecibans} and more`
                    : `${band.fromDecibans} to ${band.toDecibans}`}
                </td>
                <td>{band.words}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="small soft">
          {verbalScale.standing} A weight says how much likelier a finding is on one side than on the other;
          it is not the probability of either side.
        </p>
      </details>
    </section>
  );
}
