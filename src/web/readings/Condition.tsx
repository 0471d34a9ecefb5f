import { conditionTitle, partsInWords } from '../../weighing/makingInWords.ts';
import { outOf, probabilityBand } from '../../weighing/probabilityWords.ts';
import type { ReadingsContext } from './readingsContext.ts';

/** Second: the condition it is in if it is of the period, and how many parts were seen for it. */
export function Condition({ context }: { context: ReadingsContext }) {
  const { condition, making } = context.weighing;
  const ofThePeriod = making.answers.find(({ id }) => id === 'of-the-period')?.probability ?? 0;
  const shares = condition.ifOfThePeriod.toSorted((a, b) => b.share - a.share);
  return (
    <section className="stack-tight" aria-labelledby="condition">
      <h2 id="condition">Its condition, if it is of the period</h2>
      {making.leading !== 'of-the-period' && (
        <p className="soft">
          It is {probabilityBand(ofThePeriod).words} that it is ({outOf(ofThePeriod)}); what follows holds
          only then.
        </p>
      )}
      <ul className="read-list" aria-label="Condition, if it is of the period">
        {shares.map(({ id, share }) => (
          <li key={id}>
            <span className="said">{conditionTitle(id)}</span>
            <span className="soft">
              {probabilityBand(share).words}, {outOf(share)}
            </span>
          </li>
        ))}
      </ul>
      <p>{partsInWords(context.weighing)}</p>
    </section>
  );
}
