import { outOf, toldShares } from '../../../weighing/probabilityWords.ts';
import { yearTicks } from '../../readings/yearCurve.ts';
import { type DatingFound, datingCurve } from './datingWords.ts';

const [width, height] = [420, 110];

/** The curve of years, with the spans that are told beneath. */
export function DatingFigure({ found }: { found: DatingFound }) {
  const { from, to, points } = datingCurve(found.density, width, height);
  const x = (year: number) => Math.min(width, Math.max(0, (width * (year - from)) / (to - from)));
  const bar = ([start, end]: readonly [number, number]) => ({
    x: x(start),
    width: Math.max(2, x(end) - x(start)),
  });
  const years = (span: readonly [number, number]) => span.map(Math.round).join(' to ');
  return (
    <figure className="dating-figure">
      <svg
        viewBox={`-16 -6 ${width + 32} ${height + 44}`}
        role="img"
        aria-label={`Curve of years. ${outOf(toldShares.half)} of it lie in ${years(found.p50)}, ${outOf(toldShares.most)} in ${years(found.p90)}; its middle is ${Math.round(found.median)}.`}
      >
        {yearTicks([from, to], 7).map((year) => (
          <g key={year}>
            <line className="dating-grid" x1={x(year)} x2={x(year)} y1={0} y2={height} />
            <text x={x(year)} y={height + 34} textAnchor="middle">
              {year}
            </text>
          </g>
        ))}
        <polygon className="dating-curve" points={points} />
        <rect className="dating-most" y={height + 8} height={3} {...bar(found.p90)} />
        <rect className="dating-half" y={height + 5} height={9} {...bar(found.p50)} />
      </svg>
      <figcaption className="small soft">
        Thick bar: {outOf(toldShares.half)} · thin bar: {outOf(toldShares.most)}
      </figcaption>
    </figure>
  );
}
