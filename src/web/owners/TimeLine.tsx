import type { Owner } from '../../piece/owner.ts';
import { formatYears } from '../../units/years.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { FigureTable } from '../plots/FigureTable.tsx';
import { YearCurve, yearCurveFoot } from '../plots/YearCurve.tsx';
import { weighingBinYears, yearScale, yearsWorthDrawing, yearTicks } from '../plots/yearAxis.ts';

type Years = Pick<Weighing['years'], 'p50' | 'p90' | 'density'>;
type Props = {
  owners: readonly Owner[];
  years: Years | undefined;
  gaps: readonly { from?: number | undefined; to?: number | undefined }[];
};

const width = 640;
const row = 34;
const curve = 56;

/** Owners under one another on one line of years, below the curve of when the piece was made; gaps are hatched. */
export function TimeLine({ owners, years, gaps }: Props) {
  const dated = owners.filter((each) => yearsOf(each).length > 0);
  const span = spanOf(dated, years);
  if (span === undefined) return null;
  const across = yearScale(span, width);
  const ticks = yearTicks(span, 8);
  const top = years === undefined ? 0 : curve + yearCurveFoot + 14;
  const height = top + dated.length * row;
  return (
    <figure className="plot plot-wide">
      <svg
        viewBox={`-6 -8 ${width + 12} ${height + 30}`}
        role="img"
        aria-label={`Owners on a line of years from ${span[0]} to ${span[1]}${years === undefined ? '' : ', below the curve of when the piece was made'}. The same as a table below.`}
      >
        <defs>
          <pattern
            id="owners-gap"
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line className="owners-hatch" y1="0" y2="6" x1="0" x2="0" />
          </pattern>
        </defs>
        {ticks.map((year) => (
          <line key={year} className="plot-grid" x1={across(year)} x2={across(year)} y1={0} y2={height} />
        ))}
        {years === undefined ? null : (
          <YearCurve
            density={years.density}
            binYears={weighingBinYears}
            half={years.p50}
            most={years.p90}
            across={across}
            ticks={[]}
            height={curve}
          />
        )}
        {gaps.map(({ from, to }) =>
          from === undefined || to === undefined ? null : (
            <rect
              key={`${from} ${to}`}
              fill="url(#owners-gap)"
              x={across(from)}
              width={Math.max(2, across(to) - across(from))}
              y={top}
              height={height - top}
            />
          ),
        )}
        {dated.map((each, index) => (
          <Holding key={each.id} owner={each} across={across} y={top + index * row} />
        ))}
        <line className="plot-axis" x1={0} x2={width} y1={height} y2={height} />
        {ticks.map((year) => (
          <text
            key={year}
            x={across(year)}
            y={height + 16}
            textAnchor={across(year) < 20 ? 'start' : across(year) > width - 20 ? 'end' : 'middle'}
          >
            {year}
          </text>
        ))}
      </svg>
      <figcaption className="small soft">
        Thick: had it; pale: may have had it; thin line: lived, or in business; hatched: nobody known.
      </figcaption>
      <FigureTable
        caption="Owners with their years"
        heads={['Name', 'Lived or in business', 'Had it from', 'Had it until']}
        rows={owners.map((each) => [
          each.name,
          `${each.bornIn ?? '?'} to ${each.diedIn ?? '?'}`,
          each.began === undefined ? 'not known' : formatYears(each.began),
          each.ended === undefined ? 'not known' : formatYears(each.ended),
        ])}
      />
    </figure>
  );
}

function Holding({ owner, across, y }: { owner: Owner; across: ReturnType<typeof yearScale>; y: number }) {
  const { began, ended, bornIn, diedIn } = owner;
  const first = began?.[0] ?? ended?.[0];
  const last = ended?.[1] ?? began?.[1];
  const sureFrom = began?.[1];
  const sureTo = ended?.[0];
  const bar = (from: number, to: number) => ({
    x: across(from),
    width: Math.max(3, across(to) - across(from)),
  });
  const left = across(first ?? bornIn ?? diedIn ?? 0);
  const isLate = left > width * 0.6;
  return (
    <g>
      {bornIn === undefined && diedIn === undefined ? null : (
        <line
          className="owners-life"
          x1={across(bornIn ?? diedIn ?? 0)}
          x2={across(diedIn ?? bornIn ?? 0)}
          y1={y + 25}
          y2={y + 25}
        />
      )}
      {first === undefined || last === undefined || last < first ? null : (
        <rect className="owners-may" y={y + 19} height={12} {...bar(first, last)} />
      )}
      {sureFrom === undefined || sureTo === undefined || sureTo < sureFrom ? null : (
        <rect className="plot-bar" y={y + 19} height={12} {...bar(sureFrom, sureTo)} />
      )}
      <text
        x={isLate ? Math.min(width, across(last ?? first ?? diedIn ?? 0)) : left}
        y={y + 14}
        textAnchor={isLate ? 'end' : 'start'}
      >
        {owner.name}
      </text>
    </g>
  );
}

function yearsOf({ bornIn, diedIn, began, ended }: Owner): number[] {
  return [bornIn, diedIn, ...(began ?? []), ...(ended ?? [])].filter((each) => each !== undefined);
}

function spanOf(owners: readonly Owner[], years: Years | undefined): [number, number] | undefined {
  const all = owners.flatMap(yearsOf);
  const drawn = years === undefined ? [] : yearsWorthDrawing([years], weighingBinYears);
  if (all.length === 0) return undefined;
  const [from, to] = [Math.min(...all, ...drawn), Math.max(...all, ...drawn)];
  return [Math.floor(from / 10) * 10, Math.ceil((to + 1) / 10) * 10];
}
