import { outOf, toldShares } from '../../../weighing/probabilityWords.ts';
import { type SetSize, shareWithin, sizesDrawn } from './sizeWords.ts';

const height = 120;
const width = 360;

/** How probable each size of the set is, as bars; those within the span that is told are filled, the median is named. */
export function SizeFigure({ size }: { size: SetSize }) {
  const bars = sizesDrawn(size, 120);
  const most = Math.max(...bars.map(([, p]) => p));
  const step = width / Math.max(1, bars.length);
  const every = Math.max(1, Math.ceil(22 / step));
  const held = outOf(shareWithin(size, size.p90, toldShares.most));
  const inside = (n: number) => n >= size.p90[0] && n <= size.p90[1];
  return (
    <figure className="sets-figure">
      <svg
        viewBox={`-4 -16 ${width + 8} ${height + 36}`}
        role="img"
        aria-label={`Sizes of the set and how probable each is: the highest bar at ${bars.find(([, p]) => p === most)?.[0]}, its middle ${size.median}, ${held} from ${size.p90[0]} to ${size.p90[1]}. The same as a table below.`}
      >
        {bars.map(([n, p], index) => (
          <g key={n}>
            <rect
              className={inside(n) ? 'sets-bar within' : 'sets-bar'}
              x={index * step + step * 0.1}
              width={step * 0.8}
              y={height - (height * p) / most}
              height={(height * p) / most}
            />
            {n === size.median && (
              <text x={index * step + step / 2} y={height - (height * p) / most - 4} textAnchor="middle">
                middle
              </text>
            )}
            {index % every === 0 && (
              <text x={index * step + step / 2} y={height + 14} textAnchor="middle">
                {n}
              </text>
            )}
          </g>
        ))}
        <line className="sets-axis" x1={0} x2={width} y1={height} y2={height} />
      </svg>
      <figcaption className="small soft">Filled: {held}.</figcaption>
      <details>
        <summary>As a table</summary>
        <table className="sets-table">
          <caption>How probable each size is, in 100</caption>
          <thead>
            <tr>
              <th scope="col">Pieces</th>
              <th scope="col">In 100</th>
            </tr>
          </thead>
          <tbody>
            {bars.map(([n, p]) => (
              <tr key={n}>
                <th scope="row">{n}</th>
                <td>{(100 * p).toFixed(1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}
