import type { Picture, Region } from '../picture.ts';

/** The lightness of a region, turned so that the board’s length runs along the rows. */
export type MarksPlane = {
  /** Samples along the board, and across it. */
  along: number;
  across: number;
  stepMm: number;
  /** Row by row: the natural logarithm of lightness, less an even fall of light and vignetting. */
  values: Float32Array;
};

/** Added to lightness of 0–255, so that black has a logarithm. */
const darkest = 4;
/** At most so many samples along. */
const mostAlong = 420;

/**
 * A region of a picture as seen along the board.
 *
 * Method: the largest rectangle with the board’s direction that lies within the region and keeps its shape; sampled at the picture’s own scale or more
 * coarsely, each sample the mean of its surroundings. Of lightness the logarithm is taken, so that exposure is a shift and gamma a factor, and a surface of
 * second degree, which light that falls off and the lens’s vignetting leave, is taken away.
 *
 * @param directionRad  of the board’s length, from x towards y
 * @returns undefined where fewer than 48 by 32 samples are left
 */
export function marksPlane(
  picture: Picture,
  region: Region,
  mmPerPx: number,
  directionRad: number,
): MarksPlane | undefined {
  const [cos, sin] = [Math.cos(directionRad), Math.sin(directionRad)];
  const [halfX, halfY] = [region.widthPx / 2 - 1, region.heightPx / 2 - 1];
  const isUpright = Math.abs(sin) > Math.abs(cos);
  const [wide, high] = isUpright ? [halfY, halfX] : [halfX, halfY];
  const fit = Math.min(
    halfX / (wide * Math.abs(cos) + high * Math.abs(sin)),
    halfY / (wide * Math.abs(sin) + high * Math.abs(cos)),
  );
  const [halfAlong, halfAcross] = [wide * fit, high * fit];
  const stepPx = Math.max(1, (2 * halfAlong) / mostAlong);
  const along = Math.floor((2 * halfAlong) / stepPx);
  const across = Math.floor((2 * halfAcross) / stepPx);
  if (along < 48 || across < 32) return undefined;
  const grey = greyOf(picture);
  // Eight a side smooth a sample well enough, and keep a picture of 48 megapixels quick.
  const taps = Math.min(8, Math.max(1, Math.round(stepPx)));
  const values = new Float32Array(along * across);
  const [middleX, middleY] = [region.x + region.widthPx / 2, region.y + region.heightPx / 2];
  for (let row = 0; row < across; row++)
    for (let column = 0; column < along; column++) {
      let sum = 0;
      for (let i = 0; i < taps * taps; i++) {
        const u = (column + ((i % taps) + 0.5) / taps - along / 2) * stepPx;
        const v = (row + (Math.floor(i / taps) + 0.5) / taps - across / 2) * stepPx;
        sum += grey(middleX + cos * u - sin * v - 0.5, middleY + sin * u + cos * v - 0.5);
      }
      values[row * along + column] = sum / (taps * taps);
    }
  return { along, across, stepMm: stepPx * mmPerPx, values: flattened(values, along, across) };
}

/** Lightness between pixels, straight from each to the next. */
function greyOf({ pixels, channels, widthPx, heightPx }: Picture): (x: number, y: number) => number {
  const counted = Math.min(3, channels);
  const at = (x: number, y: number) => {
    const from =
      (Math.min(heightPx - 1, Math.max(0, y)) * widthPx + Math.min(widthPx - 1, Math.max(0, x))) * channels;
    let sum = 0;
    for (let channel = 0; channel < counted; channel++) sum += pixels[from + channel] as number;
    return sum / counted;
  };
  return (x, y) => {
    const [left, top] = [Math.floor(x), Math.floor(y)];
    const [right, down] = [x - left, y - top];
    return (
      (at(left, top) * (1 - right) + at(left + 1, top) * right) * (1 - down) +
      (at(left, top + 1) * (1 - right) + at(left + 1, top + 1) * right) * down
    );
  };
}

/** Logarithms of values less the surface of second degree fitted by its moments: over an even grid its six terms stand alone. */
function flattened(values: Float32Array, along: number, across: number): Float32Array {
  const [middleU, middleV] = [(along - 1) / 2, (across - 1) / 2];
  const [squareU, squareV] = [(along * along - 1) / 12, (across * across - 1) / 12];
  const logs = values.map((value) => Math.log(value + darkest));
  let [mean, byU, byV, byUU, byVV, byUV] = [0, 0, 0, 0, 0, 0];
  let [sizeUU, sizeVV] = [0, 0];
  for (let at = 0; at < logs.length; at++) {
    const [u, v, log] = [(at % along) - middleU, Math.floor(at / along) - middleV, logs[at] as number];
    mean += log;
    byU += u * log;
    byV += v * log;
    byUU += (u * u - squareU) * log;
    byVV += (v * v - squareV) * log;
    byUV += u * v * log;
    sizeUU += (u * u - squareU) ** 2;
    sizeVV += (v * v - squareV) ** 2;
  }
  const count = logs.length;
  mean /= count;
  byU /= count * squareU;
  byV /= count * squareV;
  byUU /= sizeUU;
  byVV /= sizeVV;
  byUV /= count * squareU * squareV;
  return logs.map((log, at) => {
    const [u, v] = [(at % along) - middleU, Math.floor(at / along) - middleV];
    const bowl = byUU * (u * u - squareU) + byVV * (v * v - squareV) + byUV * u * v;
    return log - mean - byU * u - byV * v - bowl;
  });
}
