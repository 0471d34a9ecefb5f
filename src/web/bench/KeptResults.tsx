import { partName } from '../drawer/partName.ts';
import type { BenchContext } from './benchContext.ts';

/** What was measured at the bench so far, and the findings that were entered from it. */
export function KeptResults({ context }: { context: BenchContext }) {
  const kept = Object.values(context.piece.bench);
  const entered = Object.values(context.piece.findings).filter((finding) => finding.measured !== undefined);
  if (kept.length + entered.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby="bench-kept">
      <h2 id="bench-kept">Measured so far</h2>
      <ul className="bare-list stack-tight">
        {entered.map((finding) => (
          <li key={finding.id}>
            <strong>
              {context.knowledge.signs[finding.sign]?.name ?? finding.sign},{' '}
              {partName(context.parts, finding.part)}
            </strong>{' '}
            <span className="mark">entered as a finding</span>
            <p className="small">{finding.measured?.says}</p>
            {!context.readOnly && (
              <button
                type="button"
                className="button plain small"
                onClick={() =>
                  context.record({ kind: 'finding-withdrawn', changes: [{ path: ['findings', finding.id] }] })
                }
              >
                Withdraw the finding
              </button>
            )}
          </li>
        ))}
        {kept.map((result) => (
          <li key={result.id}>
            <strong>{result.title}</strong>
            <p className="small">{result.says}</p>
            {!context.readOnly && (
              <button
                type="button"
                className="button plain small"
                onClick={() =>
                  context.record({ kind: 'bench-withdrawn', changes: [{ path: ['bench', result.id] }] })
                }
              >
                Take it off the bench
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
