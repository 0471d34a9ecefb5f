import { scaleLinear } from 'd3-scale';
import { FigureTable } from '../../plots/FigureTable.tsx';
import { linePath } from '../../plots/linePath.ts';
import type { SeeThrough } from './edgeWords.ts';

type Props = { found: SeeThrough; angleDeg: number; isChamfered: boolean };

const [width, height] = [320, 130];

/** What stays open by the angle of the eye: square edges dashed, sloped ones full. */
export function CurveFigure({ found, angleDeg, isChamfered }: Props) {
  const { curve, differsFromDeg } = found;
  const end = Math.max(10, curve.at(-1)?.angleDeg ?? 90);
  const x = scaleLinear([0, end], [0, width]).clamp(true);
  const y = scaleLinear([0, 1], [height, 0]);
  const line = (which: 'square' | 'chamfered') =>
    linePath(curve.map((each) => [x(each.angleDeg), y(each[which])]));
  const ticks = [0, 15, 30, 45, 60, 75].filter((angle) => angle <= end);
  const shown = curve.filter(({ angleDeg: angle }) => angle % 10 === 0);
  return (
    <figure className="plot edges-figure">
      <svg
        viewBox={`-34 -10 ${width + 44} ${height + 40}`}
        role="img"
        aria-label="How much of the opening stays open by the angle of the eye. The same as a table below."
      >
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <line className="plot-grid" x1={0} x2={width} y1={y(share)} y2={y(share)} />
            <text x={-6} y={y(share) + 4} textAnchor="end">
              {100 * share}
            </text>
          </g>
        ))}
        {ticks.map((angle) => (
          <text key={angle} x={x(angle)} y={height + 16} textAnchor="middle">
            {angle}°
          </text>
        ))}
        <path className="edges-curve square" d={line('square')} />
        {isChamfered && <path className="edges-curve" d={line('chamfered')} />}
        {isChamfered && differsFromDeg !== null && (
          <>
            <line className="edges-from" x1={x(differsFromDeg)} x2={x(differsFromDeg)} y1={0} y2={height} />
            <text x={x(differsFromDeg) + 4} y={4}>
              shows from {Math.round(differsFromDeg)}°
            </text>
          </>
        )}
        {angleDeg <= end && (
          <line className="edges-now" x1={x(angleDeg)} x2={x(angleDeg)} y1={0} y2={height} />
        )}
        <text x={width / 2} y={height + 29} textAnchor="middle">
          in 100 of the opening, by angle off the square
        </text>
      </svg>
      <figcaption className="small soft">
        {isChamfered ? 'Dashed: square edges · full: backs chamfered' : 'Dashed: square edges'} · blue: the
        angle chosen
      </figcaption>
      <FigureTable
        caption="Open, in 100 of the width"
        heads={['Angle', 'Square', ...(isChamfered ? ['Chamfered'] : [])]}
        rows={shown.map(({ angleDeg: angle, square, chamfered }) => [
          `${angle}°`,
          ...(isChamfered ? [square, chamfered] : [square]).map((share) => Math.round(100 * share)),
        ])}
      />
    </figure>
  );
}
