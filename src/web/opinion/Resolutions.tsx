import { findingKey } from '../../piece/finding.ts';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import { useNameBook } from '../history/useNameBook.ts';
import type { OpinionContext } from './opinionContext.ts';

/** What doesn’t fit, each as a question, and how the examiner settled it; what is left open is printed as open. */
export function Resolutions({ context }: { context: OpinionContext }) {
  const { piece, weighing, locked, used } = context;
  const names = useNameBook(piece);
  const contradictions = weighing?.contradictions ?? [];
  const keys = new Set(contradictions.map((jar) => findingKey(jar.sign, jar.part ?? undefined)));
  const earlier = Object.keys(piece.opinion.resolutions).filter((key) => !keys.has(key));
  if (contradictions.length === 0 && earlier.length === 0) return null;
  const resolve = (key: string, words: string) =>
    used.record('opinion-changed', [
      { path: ['opinion', 'resolutions', key], ...(words === '' ? {} : { to: words }) },
    ]);
  const field = (key: string, label: string) => (
    <TextPlace name={key}>
      <TextField
        label={label}
        value={piece.opinion.resolutions[key] ?? ''}
        save={(words) => resolve(key, words)}
        readOnly={locked}
        lines
      />
    </TextPlace>
  );
  return (
    <section className="stack" aria-labelledby="jars">
      <h2 id="jars">What doesn’t fit, and how you settle it</h2>
      {contradictions.map((jar) => {
        const key = findingKey(jar.sign, jar.part ?? undefined);
        return (
          <div key={key} className="jar stack-tight">
            <p className="said">{jar.question}</p>
            {jar.explanations.length === 0 ? null : (
              <ul className="small">
                {jar.explanations.map((way) => (
                  <li key={`${way.kind}-${way.id}`}>{way.words}</li>
                ))}
              </ul>
            )}
            {field(
              key,
              `Settled: ${names.sign(jar.sign)}${jar.part === null ? '' : `, ${names.part(jar.part)}`}`,
            )}
          </div>
        );
      })}
      {earlier.map((key) => {
        const [sign = '', part] = key.split('@');
        return (
          <div key={key} className="jar stack-tight">
            <p className="soft small">This did not fit before, and now does.</p>
            {field(key, `Settled: ${names.sign(sign)}${part === undefined ? '' : `, ${names.part(part)}`}`)}
          </div>
        );
      })}
      <p className="soft small">What you leave open is printed as an open question.</p>
    </section>
  );
}
