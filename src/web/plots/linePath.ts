import { line } from 'd3-shape';

/** A line through points as an SVG path, to a hundredth of what the drawing counts in. */
export const linePath = line<readonly [number, number]>().digits(2) as (
  points: Iterable<readonly [number, number]>,
) => string;
