import { scaleBand, scaleLinear } from 'd3-scale';
import { outOf, toldShares } from '../../../weighing/probabilityWords.ts';
import { FigureTable } from '../../plots/FigureTable.tsx';
import { type SetSize, shareWithin, sizesDrawn } from './sizeWords.ts';

const height = 120;
const width = 360;

/** How probable each size of the set is, as bars; those within the span that is told are filled, the median is named. */
export function SizeFigure({ size }: { size: SetSize }) {
  const bars = sizesDrawn(size, 120);
  const most = Math.max(...bars.map(([, p]) => p));
  const across = scaleBand(
    bars.map(([n]) => n),
    [0, width],
  )
    .paddingInner(0.2)
    .paddingOuter(0.1);
  const middle = (n: number) => (across(n) ?? 0) + across.bandwidth() / 2;
  const up = scaleLinear([0, most], [height, 0]);
  const every = Math.max(1, Math.ceil(22 / across.step()));
  const held = outOf(shareWithin(size, size.p90, toldShares.most));
  const inside = (n: number) => n >= size.p90[0] && n <= size.p90[1];
  return (
    <figure className="plot">
      <svg
        viewBox={`-4 -16 ${width + 8} ${height + 36}`}
        role="img"
        aria-label={`Sizes of the set and how probable each is: the highest bar at ${bars.find(([, p]) => p === most)?.[0]}, its middle ${size.median}, ${held} from ${size.p90[0]} to ${size.p90[1]}. The same as a table below.`}
      >
        {bars.map(([n, p], index) => (
          <g key={n}>
            <rect
              className={inside(n) ? 'sets-bar within' : 'sets-bar'}
              x={across(n)}
              width={across.bandwidth()}
              y={up(p)}
              height={height - up(p)}
            />
            {n === size.median && (
              <text x={middle(n)} y={up(p) - 4} textAnchor="middle">
                middle
              </text>
            )}
            {index % every === 0 && (
              <text x={middle(n)} y={height + 14} textAnchor="middle">
                {n}
              </text>
            )}
          </g>
        ))}
        <line className="plot-axis" x1={0} x2={width} y1={height} y2={height} />
      </svg>
      <figcaption className="small soft">Filled: {held}.</figcaption>
      <FigureTable
        caption="How probable each size is, in 100"
        heads={['Pieces', 'In 100']}
        rows={bars.map(([n, p]) => [n, (100 * p).toFixed(1)])}
      />
    </figure>
  );
}
