import { readingWords } from '../../piece/readings.ts';
import type { Comparison } from '../../server/issuedRoutes.ts';
import { formatYears } from '../../units/years.ts';
import { outOf } from '../../weighing/probabilityWords.ts';

/** What each reading came to when it was signed, and what it comes to now. */
export function ReadingsThenAndNow({ comparison }: { comparison: Comparison }) {
  const { readings, leading, years } = comparison;
  if (readings.length === 0)
    return (
      <section className="stack-tight">
        <h2>Readings then and now</h2>
        <p>Then or now nothing could be weighed, so there are no readings to set beside each other.</p>
      </section>
    );
  const both = [
    ...readings.map(({ id, was, now }) => ({
      name: readingWords[id].title,
      was: outOf(was),
      now: outOf(now),
    })),
    { name: 'Years', was: span(years.was), now: span(years.now) },
  ];
  return (
    <section className="stack-tight">
      <h2>Readings then and now</h2>
      {leading.was !== null && leading.now !== null && leading.was !== leading.now ? (
        <p className="caution">
          The findings led to {readingWords[leading.was].inSentence}; they lead to{' '}
          {readingWords[leading.now].inSentence} now.
        </p>
      ) : null}
      <div className="scroll">
        <table>
          <thead>
            <tr>
              <th scope="col">Reading</th>
              <th scope="col">Then</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            {both.map(({ name, was, now }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{was}</td>
                <td>{was === now ? 'the same' : now}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function span(years: readonly [number, number] | null): string {
  return years === null ? 'not known' : formatYears([Math.round(years[0]), Math.round(years[1])]);
}
