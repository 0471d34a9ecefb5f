import type { ScaleLinear } from 'd3-scale';
import { densityPath } from './densityPath.ts';
import type { Density } from './yearAxis.ts';
import './plots.css';

type Props = {
  density: Density;
  /** Years of one step, or that it slopes from year to year. */
  binYears: number | 'sloping';
  half: readonly [number, number];
  most: readonly [number, number];
  across: ScaleLinear<number, number>;
  ticks: readonly number[];
  height: number;
};

/** How far the drawing goes on below the foot of the curve, for the bars of the told spans. */
export const yearCurveFoot = 10;

/** A curve of years to its own height on the lines of the axis; at its foot a thin bar for most of it and a thick one for half. */
export function YearCurve({ density, binYears, half, most, across, ticks, height }: Props) {
  const [, width] = across.range() as [number, number];
  const bar = ([from, to]: readonly [number, number]) => ({
    x: across(from),
    width: Math.max(2, across(to) - across(from)),
  });
  return (
    <>
      {ticks.map((year) => (
        <line
          key={year}
          className="plot-grid"
          x1={across(year)}
          x2={across(year)}
          y1={0}
          y2={height + yearCurveFoot}
        />
      ))}
      <path className="plot-density" d={densityPath(density, binYears, across, [height, 4])} />
      <line className="plot-grid" x1={0} x2={width} y1={height} y2={height} />
      <rect className="plot-most" y={height + 3} height={3} {...bar(most)} />
      <rect className="plot-half" y={height + 2} height={6} {...bar(half)} />
    </>
  );
}
