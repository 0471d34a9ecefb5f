import type { Knowledge } from '../../knowledge/schema.ts';
import { spanWords } from '../../knowledge/spanWords.ts';
import { citeShort, figureLines, tellsOf } from './figureWords.ts';

/** The figures of one sign with their ranges and sources, for whoever wants to disagree with a number. */
export function SignFigures({ sign, knowledge }: { sign: Knowledge['signs'][string]; knowledge: Knowledge }) {
  const { span, basis } = sign;
  return (
    <div className="exam-figures">
      <p>Evidence of {tellsOf(sign.hangsOn, knowledge.alterations)}.</p>
      {span !== undefined && (
        <p>
          It was {spanWords(span)}
          {span.source === undefined
            ? ''
            : ` (${citeShort(span.source, knowledge.sources)}${span.at === undefined ? '' : `, ${span.at}`})`}
          .
        </p>
      )}
      <table>
        <caption>Of 100 such parts, how many show it</caption>
        <thead>
          <tr>
            <th scope="col">If it is</th>
            <th scope="col">Best</th>
            <th scope="col">From–to</th>
            <th scope="col">Who says so</th>
          </tr>
        </thead>
        <tbody>
          {figureLines(sign, knowledge.sources).map((line) => (
            <tr key={line.state}>
              <th scope="row">{line.state}</th>
              <td>{line.best}</td>
              <td>{line.range}</td>
              <td>{line.who}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {basis !== undefined && <p className="said">{basis.why}</p>}
      {sign.sources.length > 0 && (
        <p className="small soft">
          See also: {sign.sources.map((id) => citeShort(id, knowledge.sources)).join(' · ')}
        </p>
      )}
    </div>
  );
}
