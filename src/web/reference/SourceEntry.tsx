import { Link } from '@tanstack/react-router';
import type { Knowledge } from '../../knowledge/schema.ts';
import type { Work } from '../../knowledge/workSchema.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { authorsOf } from './shelves.ts';

const gradeWords: Record<string, string> = {
  A: 'statute, court, patent, peer-reviewed work or museum record',
  B: 'museum or government text, handbook, contemporary manual or teaching site',
  C: 'trade press, or a craftsman under a name',
  D: 'popular page, blog or copied encyclopedia',
};

/** A work cited: where it is, how far it was read, and what leans on it. */
export function SourceEntry({ work }: { work: Work }) {
  const knowledge = useKnowledge();
  const leaning = leansOn(work.id, knowledge);
  return (
    <div className="stack">
      <h2>{work.title}</h2>
      <dl className="facts">
        {work.author.length === 0 ? null : (
          <>
            <dt>By</dt>
            <dd>{authorsOf(work)}</dd>
          </>
        )}
        {work['container-title'] === undefined ? null : (
          <>
            <dt>In</dt>
            <dd>
              {work['container-title']}
              {work.volume === undefined ? '' : `, volume ${work.volume}`}
              {work.page === undefined ? '' : `, ${work.page}`}
            </dd>
          </>
        )}
        {work.publisher === undefined && work.issued === undefined ? null : (
          <>
            <dt>Published</dt>
            <dd>{[work.publisher, work.issued].filter((one) => one !== undefined).join(', ')}</dd>
          </>
        )}
        {work.URL === undefined ? null : (
          <>
            <dt>At</dt>
            <dd className="address">
              <a href={work.URL} rel="noreferrer external" target="_blank">
                {work.URL}
                <span className="unseen"> (opens another site in a new tab)</span>
              </a>
            </dd>
          </>
        )}
        <dt>Read</dt>
        <dd>{work.read}</dd>
        {work.grade === undefined ? null : (
          <>
            <dt>Kind</dt>
            <dd>
              {work.grade}: {gradeWords[work.grade]}
            </dd>
          </>
        )}
      </dl>
      {work.note === undefined ? null : <p className="said">{work.note}</p>}
      {leaning.length === 0 ? null : (
        <section className="stack-tight">
          <h3>Signs that lean on it</h3>
          <ul>
            {leaning.map((sign) => (
              <li key={sign.id}>
                <Link to="/reference" search={{ sign: sign.id }}>
                  {sign.name}
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

function leansOn(id: string, { signs }: Knowledge): { id: string; name: string }[] {
  return Object.values(signs).filter(
    (sign) =>
      sign.sources.includes(id) ||
      sign.basis?.source === id ||
      sign.span?.source === id ||
      Object.values(sign.shows).some((figure) => figure.source === id),
  );
}
