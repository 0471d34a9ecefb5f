import type { Plane } from './grainPlane.ts';

/** Sums of products of the gradient (x to the right, y down) over the pixels of one cell. */
export type TensorCell = { xx: number; xy: number; yy: number; pixels: number };

/** The structure tensor over square cells, row by row from the top left; what is left over at the far edges goes to the last cells. */
export type TensorGrid = { columns: number; rows: number; cellPx: number; cells: TensorCell[] };

/** The Gaussian derivative reaches this far, so the outermost pixels have no gradient. */
export const gradientReachPx = 3;

/**
 * The structure tensor of a picture, cell by cell.
 *
 * Method: gradients by Gaussian derivatives (sigma 1 pixel, seven taps), scaled so that a ramp of one a pixel gives exactly one; their products are
 * summed over each cell less the product of the cell's mean gradient. What is taken off is an even slope of lighting over the cell,
 * which would look like grain; grain itself rises and falls several times within a cell.
 *
 * @param cellPx  side of a cell, well above the distance of growth rings
 * @param keepMeanGradient  true leaves the even slope in, as the textbook has it
 * @source Bigun and Granlund, First International Conference on Computer Vision (1987) 433–438; Jähne, Digital Image Processing, on local
 *         orientation: both from memory. Taking off the mean is ours
 */
export function structureTensor(plane: Plane, cellPx: number, keepMeanGradient = false): TensorGrid {
  const { widthPx, heightPx } = plane;
  const columns = Math.max(1, Math.floor(widthPx / cellPx));
  const rows = Math.max(1, Math.floor(heightPx / cellPx));
  const sums = new Float64Array(columns * rows * 6);
  const reach = gradientReachPx;
  const smoothed = new Float64Array(widthPx);
  const derived = new Float64Array(widthPx);
  for (let y = reach; y < heightPx - reach; y++) {
    filterColumns(plane, y, smoothed, derived);
    const rowStart = Math.min(rows - 1, Math.floor(y / cellPx)) * columns;
    for (let column = 0; column < columns; column++) {
      const from = Math.max(reach, column * cellPx);
      const to = column === columns - 1 ? widthPx - reach : Math.min((column + 1) * cellPx, widthPx - reach);
      addCell(sums, (rowStart + column) * 6, smoothed, derived, from, to);
    }
  }
  const cells = Array.from({ length: columns * rows }, (_, index) =>
    cellOf(sums, index * 6, keepMeanGradient),
  );
  return { columns, rows, cellPx, cells };
}

const offsets = [-3, -2, -1, 0, 1, 2, 3];
const smooth = scaled(
  offsets.map((each) => Math.exp((-each * each) / 2)),
  () => 1,
);
const derive = scaled(
  offsets.map((each) => each * Math.exp((-each * each) / 2)),
  (each) => each,
);
/** The seven taps along and across: a smooth mean, and a slope. */
export const gradientTaps = { smooth, derive } as const;

const [s0, s1, s2, s3] = smooth.slice(3) as [number, number, number, number];
const [, d1, d2, d3] = derive.slice(3) as [number, number, number, number];

/** The taps, scaled so that their sum weighted by `by` is one. */
function scaled(taps: number[], by: (offset: number) => number): number[] {
  const sum = taps.reduce((total, tap, index) => total + tap * by(offsets[index] as number), 0);
  return taps.map((tap) => tap / sum);
}

/** One row, smoothed and derived down the columns. */
function filterColumns(
  { widthPx, values }: Plane,
  y: number,
  smoothed: Float64Array,
  derived: Float64Array,
): void {
  const at = y * widthPx;
  for (let x = 0; x < widthPx; x++) {
    const here = at + x;
    const up1 = values[here - widthPx] as number;
    const up2 = values[here - 2 * widthPx] as number;
    const up3 = values[here - 3 * widthPx] as number;
    const down1 = values[here + widthPx] as number;
    const down2 = values[here + 2 * widthPx] as number;
    const down3 = values[here + 3 * widthPx] as number;
    smoothed[x] =
      s0 * (values[here] as number) + s1 * (up1 + down1) + s2 * (up2 + down2) + s3 * (up3 + down3);
    derived[x] = d1 * (down1 - up1) + d2 * (down2 - up2) + d3 * (down3 - up3);
  }
}

function addCell(
  sums: Float64Array,
  at: number,
  smoothed: Float64Array,
  derived: Float64Array,
  from: number,
  to: number,
): void {
  let [xx, xy, yy, x1, y1] = [0, 0, 0, 0, 0];
  for (let x = from; x < to; x++) {
    const gx =
      d1 * ((smoothed[x + 1] as number) - (smoothed[x - 1] as number)) +
      d2 * ((smoothed[x + 2] as number) - (smoothed[x - 2] as number)) +
      d3 * ((smoothed[x + 3] as number) - (smoothed[x - 3] as number));
    const gy =
      s0 * (derived[x] as number) +
      s1 * ((derived[x - 1] as number) + (derived[x + 1] as number)) +
      s2 * ((derived[x - 2] as number) + (derived[x + 2] as number)) +
      s3 * ((derived[x - 3] as number) + (derived[x + 3] as number));
    xx += gx * gx;
    xy += gx * gy;
    yy += gy * gy;
    x1 += gx;
    y1 += gy;
  }
  sums[at] = (sums[at] as number) + xx;
  sums[at + 1] = (sums[at + 1] as number) + xy;
  sums[at + 2] = (sums[at + 2] as number) + yy;
  sums[at + 3] = (sums[at + 3] as number) + x1;
  sums[at + 4] = (sums[at + 4] as number) + y1;
  sums[at + 5] = (sums[at + 5] as number) + Math.max(0, to - from);
}

function cellOf(sums: Float64Array, at: number, keepMeanGradient: boolean): TensorCell {
  const [xx, xy, yy, x1, y1, pixels] = sums.subarray(at, at + 6) as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  if (keepMeanGradient || pixels === 0) return { xx, xy, yy, pixels };
  return {
    xx: Math.max(0, xx - (x1 * x1) / pixels),
    xy: xy - (x1 * y1) / pixels,
    yy: Math.max(0, yy - (y1 * y1) / pixels),
    pixels,
  };
}
