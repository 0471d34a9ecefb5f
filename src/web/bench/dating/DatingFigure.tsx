import { outOf, toldShares } from '../../../weighing/probabilityWords.ts';
import { YearCurve, yearCurveFoot } from '../../plots/YearCurve.tsx';
import { yearScale, yearsWorthDrawing, yearTicks } from '../../plots/yearAxis.ts';
import type { DatingFound } from './datingWords.ts';

const [width, height] = [420, 110];

/** The curve of years, with the spans that are told beneath. */
export function DatingFigure({ found }: { found: DatingFound }) {
  const span = yearsWorthDrawing([found], 1);
  const across = yearScale(span, width);
  const ticks = yearTicks(span, 7);
  const years = (told: readonly [number, number]) => told.map(Math.round).join(' to ');
  return (
    <figure className="plot">
      <svg
        viewBox={`-16 0 ${width + 32} ${height + 34}`}
        role="img"
        aria-label={`Curve of years. ${outOf(toldShares.half)} of it lie in ${years(found.p50)}, ${outOf(toldShares.most)} in ${years(found.p90)}; its middle is ${Math.round(found.median)}.`}
      >
        <YearCurve
          density={found.density}
          binYears="sloping"
          half={found.p50}
          most={found.p90}
          {...{ across, ticks, height }}
        />
        {ticks.map((year) => (
          <text key={year} x={across(year)} y={height + yearCurveFoot + 16} textAnchor="middle">
            {year}
          </text>
        ))}
      </svg>
      <figcaption className="small soft">
        Thick bar: {outOf(toldShares.half)} · thin bar: {outOf(toldShares.most)}
      </figcaption>
    </figure>
  );
}
