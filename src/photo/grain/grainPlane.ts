import type { Picture, Region } from '../picture.ts';

/** One measure a pixel, row by row from the top left. */
export type Plane = { widthPx: number; heightPx: number; values: Float32Array };

/** A part of a picture as lightness, and how many of its pixels went into one. */
export type ShrunkPlane = Plane & { factor: number };

/** Larger regions are averaged down to this many pixels: four million. */
const mostPixels = 4_000_000;

/**
 * The lightness of a region, 0 black to 100 white, averaged down where it is large.
 *
 * Method: each channel is turned from sRGB into linear light, weighed into luminance (0.2126, 0.7152, 0.0722), averaged over
 * squares of `factor` pixels a side (the sensor would have added light up, not code values), then turned into CIE lightness L*,
 * in which equal steps look equal and a picture's noise is more even. What is left over at the right and lower edge is dropped.
 *
 * @param region  whole pixels inside the picture
 * @param most    the most pixels of the result
 * @source IEC 61966-2-1 (sRGB) and CIE 15 (L*), both from memory; held against published pairs in the test
 */
export function lightnessPlane(picture: Picture, region: Region, most = mostPixels): ShrunkPlane {
  const factor = Math.max(1, Math.ceil(Math.sqrt((region.widthPx * region.heightPx) / most)));
  const widthPx = Math.floor(region.widthPx / factor);
  const heightPx = Math.floor(region.heightPx / factor);
  if (widthPx < 1 || heightPx < 1) throw new RangeError('lightnessPlane needs a region of at least 1 pixel');
  const values = new Float32Array(widthPx * heightPx);
  const tables = channelTables(picture.channels);
  for (let row = 0; row < heightPx; row++) {
    const into = values.subarray(row * widthPx, (row + 1) * widthPx);
    for (let inner = 0; inner < factor; inner++) {
      const y = region.y + row * factor + inner;
      addRow(into, picture, (y * picture.widthPx + region.x) * picture.channels, factor, tables);
    }
    for (let column = 0; column < widthPx; column++) {
      into[column] = lightness((into[column] as number) / (factor * factor));
    }
  }
  return { widthPx, heightPx, values, factor };
}

function addRow(
  into: Float32Array,
  { pixels, channels }: Picture,
  start: number,
  factor: number,
  tables: readonly Float32Array[],
): void {
  const [red, green, blue] = tables as [Float32Array, Float32Array, Float32Array];
  let at = start;
  for (let column = 0; column < into.length; column++) {
    let sum = 0;
    for (let inner = 0; inner < factor; inner++, at += channels) {
      sum += red[pixels[at] as number] as number;
      if (channels === 1) continue;
      sum += (green[pixels[at + 1] as number] as number) + (blue[pixels[at + 2] as number] as number);
    }
    into[column] = (into[column] as number) + sum;
  }
}

/** What each value of each channel adds to the luminance, 0–1. */
function channelTables(channels: Picture['channels']): Float32Array[] {
  const shares = channels === 1 ? [1] : [0.2126, 0.7152, 0.0722];
  return shares.map((share) => Float32Array.from({ length: 256 }, (_, code) => share * linear(code / 255)));
}

function linear(code: number): number {
  return code <= 0.04045 ? code / 12.92 : ((code + 0.055) / 1.055) ** 2.4;
}

function lightness(luminance: number): number {
  return luminance > 216 / 24389 ? 116 * Math.cbrt(luminance) - 16 : (luminance * 24389) / 27;
}
