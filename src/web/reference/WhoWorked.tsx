import type { Shop } from '../../knowledge/schema.ts';
import { areWorkersUnknown, workersUnknownWords } from '../../knowledge/workersUnknown.ts';
import { citeShort } from '../examination/figureWords.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';

/** Whose hands did a place's work, with the works that tell it, or that it is not known. */
export function WhoWorked({ shop }: { shop: Shop }) {
  const { sources } = useKnowledge();
  const known = shop.whoWorked;
  if (known === undefined && !areWorkersUnknown(shop)) return null;
  const whose = [...(known?.sources ?? []).map((id) => citeShort(id, sources)), known?.at, known?.by];
  return (
    <section className="stack-tight">
      <h3>Who did the work</h3>
      <p>
        <span className="said">{known?.words ?? workersUnknownWords}</span>{' '}
        <span className="small soft">{whose.filter((each) => each !== undefined).join('; ')}</span>
      </p>
    </section>
  );
}
