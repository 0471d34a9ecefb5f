import { Link } from '@tanstack/react-router';
import { isProvisional, provisionalWords } from '../../knowledge/isProvisional.ts';
import { areWorkersUnknown, workersUnknownWords } from '../../knowledge/workersUnknown.ts';
import { placeInWords } from '../../weighing/placeInWords.ts';
import { outOf, probabilityBand } from '../../weighing/probabilityWords.ts';
import type { ReadingsContext } from './readingsContext.ts';

/** What may have been done to the piece since it was made. */
export function Alterations({ context }: { context: ReadingsContext }) {
  return (
    <section className="stack-tight">
      <h2>What was done to it</h2>
      <ul className="read-pairs">
        {context.weighing.alterations.map(({ id, name, probability }) => {
          const known = context.knowledge.alterations[id];
          return (
            <li key={id}>
              <details>
                <summary>
                  <span className="said">{name}</span>{' '}
                  <span className="soft">{probabilityBand(probability).words}</span>
                </summary>
                <p>{outOf(probability)}.</p>
                {known !== undefined && (
                  <>
                    <p>{known.what}</p>
                    <p>{known.honestContrast}</p>
                    <p className="small soft">
                      <Link to="/reference" search={{ alteration: id }}>
                        In the reference
                      </Link>
                    </p>
                  </>
                )}
              </details>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Which shop or regional habits fit. */
export function Shops({ context }: { context: ReadingsContext }) {
  return (
    <section className="stack-tight">
      <h2>Whose habits fit</h2>
      {context.weighing.place !== undefined && <p>{placeInWords(context.weighing).join(' ')}</p>}
      {context.weighing.shops.length === 0 && (
        <p className="soft">No shop or regional file fits this form and these years.</p>
      )}
      <ul className="read-pairs">
        {context.weighing.shops.map(({ id, name, probability }) => {
          const known = context.knowledge.shops[id];
          return (
            <li key={id}>
              <details>
                <summary>
                  <span className="said">{name}</span>{' '}
                  {known?.invented === true && <span className="mark">invented</span>}{' '}
                  <span className="soft">{probabilityBand(probability).words}</span>
                </summary>
                <p>{outOf(probability)}.</p>
                {known !== undefined && (
                  <>
                    <p>
                      {known.place}, {known.years[0]}–{known.years[1]}. {known.what}
                    </p>
                    {isProvisional(known) && <p className="small soft">{provisionalWords}</p>}
                    {known.whoWorked !== undefined && <p>{known.whoWorked.words}</p>}
                    {areWorkersUnknown(known) && <p className="small soft">{workersUnknownWords}</p>}
                    <p className="small soft">
                      <Link to="/reference" search={{ shop: id }}>
                        In the reference
                      </Link>
                    </p>
                  </>
                )}
              </details>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
