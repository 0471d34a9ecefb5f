import type { Picture, Region } from '../picture.ts';

/** How steep the lightness is over a region, pixel by pixel. */
export type EdgePlane = {
  widthPx: number;
  heightPx: number;
  slopeX: Float32Array;
  slopeY: Float32Array;
  slope: Float32Array;
  /** The slope over the steepest few of the region, 0–1. */
  strength: Float32Array;
};

/**
 * The slopes of a region’s lightness.
 *
 * Method: the mean of the channels, smoothed by the weights 1 4 6 4 1 both ways; then differences of neighbours two apart. Full
 * strength is where 1 in 200 is steeper.
 *
 * @throws RangeError if the region reaches outside the picture
 */
export function edgePlane(picture: Picture, { x, y, widthPx, heightPx }: Region): EdgePlane {
  if (x < 0 || y < 0 || x + widthPx > picture.widthPx || y + heightPx > picture.heightPx)
    throw new RangeError('edgePlane needs a region within the picture');
  const grey = new Float32Array(widthPx * heightPx);
  const counted = Math.min(3, picture.channels);
  for (let row = 0; row < heightPx; row++)
    for (let column = 0; column < widthPx; column++) {
      const at = ((y + row) * picture.widthPx + x + column) * picture.channels;
      let sum = 0;
      for (let channel = 0; channel < counted; channel++) sum += picture.pixels[at + channel] as number;
      grey[row * widthPx + column] = sum / counted;
    }
  const smooth = blurred(blurred(grey, widthPx, heightPx, 1, 0), widthPx, heightPx, 0, 1);
  const [slopeX, slopeY, slope] = [0, 1, 2].map(() => new Float32Array(widthPx * heightPx)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  const at = held(smooth, widthPx, heightPx);
  for (let row = 0; row < heightPx; row++)
    for (let column = 0; column < widthPx; column++) {
      const index = row * widthPx + column;
      slopeX[index] = (at(column + 1, row) - at(column - 1, row)) / 2;
      slopeY[index] = (at(column, row + 1) - at(column, row - 1)) / 2;
      slope[index] = Math.hypot(slopeX[index] as number, slopeY[index] as number);
    }
  const full = Math.max(1e-6, slope.slice().sort()[Math.floor(slope.length * 0.995)] as number);
  return {
    widthPx,
    heightPx,
    slopeX,
    slopeY,
    slope,
    strength: slope.map((each) => Math.min(1, each / full)),
  };
}

function blurred(
  grey: Float32Array,
  widthPx: number,
  heightPx: number,
  dx: number,
  dy: number,
): Float32Array {
  const at = held(grey, widthPx, heightPx);
  const out = new Float32Array(grey.length);
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++)
      out[y * widthPx + x] =
        (at(x - 2 * dx, y - 2 * dy) +
          4 * at(x - dx, y - dy) +
          6 * at(x, y) +
          4 * at(x + dx, y + dy) +
          at(x + 2 * dx, y + 2 * dy)) /
        16;
  return out;
}

/** Reads a plane, its rim held on beyond its ends. */
function held(plane: Float32Array, widthPx: number, heightPx: number): (x: number, y: number) => number {
  return (x, y) =>
    plane[Math.min(heightPx - 1, Math.max(0, y)) * widthPx + Math.min(widthPx - 1, Math.max(0, x))] as number;
}
