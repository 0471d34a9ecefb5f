import { Link } from '@tanstack/react-router';
import { basisWord } from '../../knowledge/basisWord.ts';
import type { Sign } from '../../knowledge/schema.ts';
import { citeShort } from '../examination/figureWords.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';

/** The works an entry leans on, each once, with a way to them. */
export function Cited({ ids }: { ids: readonly string[] }) {
  const { sources } = useKnowledge();
  const once = [...new Set(ids)].filter((id) => sources[id] !== undefined);
  if (once.length === 0) return null;
  return (
    <section className="stack-tight">
      <h3>Sources</h3>
      <ul>
        {once.map((id) => (
          <li key={id}>
            <Link to="/reference" search={{ source: id }}>
              {citeShort(id, sources)}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Why the figures are what they are, where the entry says. */
export function Basis({ basis }: { basis: Sign['basis'] }) {
  if (basis === undefined) return null;
  return (
    <p>
      <span className="soft">
        Why these figures{basis.by === undefined ? '' : ` (${basisWord(basis.by)})`}:
      </span>{' '}
      <span className="said">{basis.why}</span>
    </p>
  );
}
