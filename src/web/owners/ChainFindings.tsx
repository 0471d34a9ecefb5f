import type { provenanceCheck } from '../../calculations/provenanceCheck.ts';
import type { OutputOf } from '../../calculations/runCalculation.ts';
import { formatYears, type YearSpan } from '../../units/years.ts';

type Props = { check: OutputOf<typeof provenanceCheck>; made: YearSpan | undefined };

/** What the chain says against itself and against the findings, in words; what can’t have been stands first. */
export function ChainFindings({ check, made }: Props) {
  const { impossible, overlaps, gaps, remarks } = check;
  const isClean = impossible.length + overlaps.length + gaps.length === 0;
  return (
    <section className="stack-tight" aria-labelledby="owners-check">
      <h2 id="owners-check">What the chain says</h2>
      <Told title="Can’t have been as told" items={impossible.map(({ words }) => words)} isGrave />
      <Told title="Two at once" items={overlaps.map(({ words }) => words)} isGrave />
      <Told title="Open" items={gaps.map(({ words }) => words)} />
      {remarks.map((each) => (
        <p key={each} className="caution">
          {each}
        </p>
      ))}
      {isClean ? <p>The years agree with each other, and nobody is missing between them.</p> : null}
      <p className="small soft">
        {made === undefined
          ? 'Nothing is weighed yet, so the chain is not held against the years of making.'
          : `Held against the years of making by the findings, ${formatYears(made)}. A date in doubt speaks for the chain: only what is wrong under every year left open is named.`}
      </p>
    </section>
  );
}

function Told({
  title,
  items,
  isGrave = false,
}: {
  title: string;
  items: readonly string[];
  isGrave?: boolean;
}) {
  if (items.length === 0) return null;
  return (
    <div className={isGrave ? 'caution stack-tight' : 'stack-tight'}>
      <h3>{title}</h3>
      <ul>
        {items.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </div>
  );
}
