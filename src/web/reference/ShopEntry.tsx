import { Link } from '@tanstack/react-router';
import { isProvisional, provisionalWords } from '../../knowledge/isProvisional.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { formatYears } from '../../units/years.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { Basis, Cited } from './Cited.tsx';
import { FigureTable, figureLine } from './FigureTable.tsx';
import { OwnMark } from './own/OwnMark.tsx';
import { kindWords } from './plainWords.ts';
import { WhoWorked } from './WhoWorked.tsx';

/** The habits of a shop or region, with how often they show. */
export function ShopEntry({ shop }: { shop: Knowledge['shops'][string] }) {
  const { signs, sources, forms } = useKnowledge();
  return (
    <div className="stack">
      <h2>{shop.name}</h2>
      {shop.invented ? (
        <p className="caution">Invented for the worked examples: no such shop is known. Do not cite it.</p>
      ) : null}
      {isProvisional(shop) ? <p className="caution">{provisionalWords}</p> : null}
      {shop.mine === true ? <OwnMark kind="shop" id={shop.id} /> : null}
      <p className="said entry-lead">{shop.what}</p>
      <dl className="facts">
        <dt>Place</dt>
        <dd>{shop.place}</dd>
        <dt>Years</dt>
        <dd>{formatYears(shop.years)}</dd>
        <dt>Forms</dt>
        <dd>{shop.forms.map((id) => forms[id]?.name ?? id).join(', ')}</dd>
        {shop.woods === '' ? null : (
          <>
            <dt>Woods</dt>
            <dd>{shop.woods}</dd>
          </>
        )}
      </dl>
      <WhoWorked shop={shop} />
      <FigureTable
        caption="Of 100 period pieces of these forms and years, how many come from here"
        head="Of"
        lines={[figureLine('All places', shop.share, shop.basis, sources)]}
      />
      <FigureTable
        caption="Habits: of 100 such parts from here, how many show the sign"
        head="Sign"
        lines={shop.habits.map((habit) => {
          const on = habit.on === undefined ? '' : ` (${habit.on.map(kindWords).join(', ')})`;
          return {
            ...figureLine(`${signs[habit.sign]?.name ?? habit.sign}${on}`, habit.shows, shop.basis, sources),
            link: habit.sign,
          };
        })}
        nameOf={(line) =>
          line.link === undefined ? (
            line.name
          ) : (
            <Link to="/reference" search={{ sign: line.link }}>
              {line.name}
            </Link>
          )
        }
      />
      <Basis basis={shop.basis} />
      <Cited
        ids={[
          ...shop.sources,
          ...(shop.basis?.source === undefined ? [] : [shop.basis.source]),
          ...(shop.whoWorked?.sources ?? []),
          ...shop.habits.flatMap((habit) => habit.shows.source ?? []),
        ]}
      />
    </div>
  );
}
