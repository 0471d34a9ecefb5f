import { Link } from '@tanstack/react-router';
import type { Alteration } from '../../knowledge/schema.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { Basis, Cited } from './Cited.tsx';
import { FigureTable, figureLine } from './FigureTable.tsx';
import { kindWords, originWords } from './plainWords.ts';

const classWords: Record<Alteration['class'], string> = {
  upkeep: 'Upkeep: the piece counts as intact.',
  repair: 'A repair: the piece counts as repaired.',
  improve: 'An improvement: the piece counts as altered.',
  'make-up': 'Making up: the piece counts as made of several.',
};

/** What may have been done to a piece, the signs it leaves, and what to tell its owner. */
export function AlterationEntry({ alteration }: { alteration: Alteration }) {
  const { signs, sources } = useKnowledge();
  const traces = Object.values(signs).filter((sign) => sign.hangsOn === `alteration/${alteration.id}`);
  return (
    <div className="stack">
      <h2>{alteration.name}</h2>
      <p className="said entry-lead">{alteration.what}</p>
      <p>{classWords[alteration.class]}</p>
      <dl className="facts">
        <dt>Done honestly</dt>
        <dd>{alteration.honestContrast}</dd>
        <dt>To tell the owner</dt>
        <dd>{alteration.tellOwner}</dd>
        <dt>In the market</dt>
        <dd>{alteration.desirability}</dd>
        {alteration.earliest === undefined ? null : (
          <>
            <dt>Not before</dt>
            <dd>{alteration.earliest}</dd>
          </>
        )}
      </dl>
      <FigureTable
        caption="Of 100 pieces of a form prone to it, to how many it happened"
        head="Among"
        lines={[
          figureLine('Pieces of the period', alteration.happened.period, alteration.basis, sources),
          figureLine('Later copies', alteration.happened.later, alteration.basis, sources),
          ...(alteration.happened['to-deceive'] === undefined
            ? []
            : [
                figureLine(
                  'Pieces made or altered to pass as older',
                  alteration.happened['to-deceive'],
                  alteration.basis,
                  sources,
                ),
              ]),
        ]}
      />
      {Object.keys(alteration.changes).length === 0 ? null : (
        <FigureTable
          caption="Where it happened: of 100 such parts, how many are then not original"
          head="Part"
          lines={Object.entries(alteration.changes).map(([kind, { to, ...share }]) =>
            figureLine(`${kindWords(kind)}: then ${originWords(to)}`, share, alteration.basis, sources),
          )}
        />
      )}
      <Basis basis={alteration.basis} />
      {traces.length === 0 ? null : (
        <section className="stack-tight">
          <h3>Signs it leaves</h3>
          <ul>
            {traces.map((sign) => (
              <li key={sign.id}>
                <Link to="/reference" search={{ sign: sign.id }}>
                  {sign.name}
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Cited
        ids={[
          ...alteration.sources,
          ...(alteration.basis?.source === undefined ? [] : [alteration.basis.source]),
        ]}
      />
    </div>
  );
}
