import type { WhoWorked as Known } from '../../knowledge/whoWorkedSchema.ts';
import { citeShort } from '../examination/figureWords.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';

/** Whose hands did a place's work, with the works that tell it. */
export function WhoWorked({ known }: { known: Known | undefined }) {
  const { sources } = useKnowledge();
  if (known === undefined) return null;
  const { words, at, by } = known;
  const whose = [...known.sources.map((id) => citeShort(id, sources)), at, by];
  return (
    <section className="stack-tight">
      <h3>Who did the work</h3>
      <p>
        <span className="said">{words}</span>{' '}
        <span className="small soft">{whose.filter((each) => each !== undefined).join('; ')}</span>
      </p>
    </section>
  );
}
