import type { Picture, Region } from '../picture.ts';
import type { Lab, Rgb } from './colourSpace.ts';

/** The colour of a region: its mean, how far single spots depart, and how much of it was clipped. */
export type ColourSample = {
  /** Encoded, 0–1. */
  mean: Rgb;
  /** CIELAB: mean of the spots’ colours and their standard deviation. */
  lab: Lab;
  sd: Lab;
  /** Standard uncertainty of the mean; wood is not alike from spot to spot, so it falls by blocks and not by pixels. */
  sigma: Lab;
  /** Share of pixels at black or white in any channel: above a few in 100 the colour is not to be had. */
  clippedShare: number;
};

/** Blocks a side that a region is cut into. */
const blocks = 6;

/**
 * The colour of a region of a picture.
 *
 * Method: the region is cut into 6 × 6 blocks; the colour of each is the mean of its pixels. Pixels next to each other are
 * much alike, so the uncertainty of the whole is the spread of the blocks over the root of their number.
 *
 * @param region    at least 6 by 6 pixels within the picture
 * @param labOf     how a colour of the picture is read as CIELAB: plain, or through a balance
 * @throws RangeError if the region is smaller or reaches outside the picture
 * @source ours
 */
export function colourSample(picture: Picture, region: Region, labOf: (rgb: Rgb) => Lab): ColourSample {
  if (!isWithin(picture, region) || region.widthPx < blocks || region.heightPx < blocks)
    throw new RangeError(`colourSample needs ${blocks} by ${blocks} pixels within the picture`);
  const means: Rgb[] = [];
  let clipped = 0;
  for (let row = 0; row < blocks; row++)
    for (let column = 0; column < blocks; column++) {
      const block = blockMean(picture, region, row, column);
      means.push(block.mean);
      clipped += block.clippedShare;
    }
  const labs = means.map(labOf);
  const lab = each((key) => labs.reduce((sum, one) => sum + one[key], 0) / labs.length);
  const sd = each((key) =>
    Math.sqrt(labs.reduce((sum, one) => sum + (one[key] - lab[key]) ** 2, 0) / (labs.length - 1)),
  );
  const channel = (index: 0 | 1 | 2) => means.reduce((sum, rgb) => sum + rgb[index], 0) / means.length;
  return {
    mean: [channel(0), channel(1), channel(2)],
    lab,
    sd,
    sigma: each((key) => sd[key] / Math.sqrt(labs.length)),
    clippedShare: clipped / means.length,
  };
}

/** Whether a region lies whole within a picture. */
function isWithin(picture: Picture, { x, y, widthPx, heightPx }: Region): boolean {
  return x >= 0 && y >= 0 && x + widthPx <= picture.widthPx && y + heightPx <= picture.heightPx;
}

function blockMean(picture: Picture, region: Region, row: number, column: number) {
  const from = (start: number, length: number, index: number) =>
    Math.floor(start + (length * index) / blocks);
  const [left, right] = [from(region.x, region.widthPx, column), from(region.x, region.widthPx, column + 1)];
  const [top, bottom] = [from(region.y, region.heightPx, row), from(region.y, region.heightPx, row + 1)];
  const { pixels, channels, widthPx } = picture;
  const [green, blue] = channels === 1 ? [0, 0] : [1, 2];
  const sums = [0, 0, 0];
  let clipped = 0;
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++) {
      const at = (y * widthPx + x) * channels;
      const values = [pixels[at] as number, pixels[at + green] as number, pixels[at + blue] as number];
      if (values.some((value) => value <= 2 || value >= 253)) clipped++;
      values.forEach((value, index) => {
        sums[index] = (sums[index] as number) + value / 255;
      });
    }
  const count = (bottom - top) * (right - left);
  const [r = 0, g = 0, b = 0] = sums.map((sum) => sum / count);
  return { mean: [r, g, b] as Rgb, clippedShare: clipped / count };
}

function each(value: (key: 'L' | 'a' | 'b') => number): Lab {
  return { L: value('L'), a: value('a'), b: value('b') };
}
