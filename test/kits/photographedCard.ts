import { type Homography, inverse, mapped } from '../../src/photo/geometry/homography.ts';
import { undistorted } from '../../src/photo/geometry/lens.ts';
import { lensFrameOf } from '../../src/photo/geometry/lensEstimate.ts';
import type { Point } from '../../src/photo/picture.ts';
import type { GreyPicture } from '../../src/web/bench/vision/greyPicture.ts';
import type { PrintedCard } from './printedCard.ts';
import { drawn } from './surfaces/drawn.ts';

/** How a card is photographed. */
export type CardView = {
  widthPx: number;
  heightPx: number;
  /** From the card in mm to the picture of a perfect lens. */
  toPicture: Homography;
  /** One radial term about the middle, in half diagonals. */
  k1?: number;
  /** Standard deviation of the grain of the picture, in tones of 256. */
  noise?: number;
  /** Rays to a side of each pixel: the picture is the mean of them. */
  rays?: number;
  seed: number;
};

/**
 * A photograph of a printed card lying on a board, drawn ray by ray: each pixel is the mean of rays through it, darker to one side as
 * light falls off, with grain.
 */
export function photographedCard(card: PrintedCard, view: CardView): GreyPicture {
  const { widthPx, heightPx, toPicture, k1 = 0, noise = 3, rays = 2, seed } = view;
  const random = drawn(seed);
  const toCard = inverse(toPicture);
  const frame = lensFrameOf(widthPx, heightPx);
  const pixels = new Uint8Array(widthPx * heightPx);
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      let sum = 0;
      for (let ray = 0; ray < rays * rays; ray++) {
        const at: Point = [
          x + ((ray % rays) + 0.5) / rays - 0.5,
          y + (Math.floor(ray / rays) + 0.5) / rays - 0.5,
        ];
        const straight = k1 === 0 ? at : (undistorted({ k1 }, frame, at) ?? at);
        sum += toneOf(card, mapped(toCard, straight).point);
      }
      const light = 0.75 + (0.2 * x) / widthPx;
      pixels[y * widthPx + x] = Math.max(
        0,
        Math.min(255, Math.round((light * sum) / (rays * rays) + noise * random.normal())),
      );
    }
  }
  return { widthPx, heightPx, pixels };
}

/** Paper where the card is, between its pixels; a striped board beside it. */
function toneOf(card: PrintedCard, [xMm, yMm]: Point): number {
  const [u, v] = card.at(xMm, yMm);
  const [x, y] = [Math.floor(u), Math.floor(v)];
  if (!(x >= 0 && y >= 0 && x < card.widthPx - 1 && y < card.heightPx - 1))
    return 120 + 40 * Math.sin(xMm / 3 + Math.sin(yMm / 40));
  const [fx, fy] = [u - x, v - y];
  const at = 3 * (y * card.widthPx + x) + 1;
  const below = at + 3 * card.widthPx;
  const top = (card.rgb[at] as number) * (1 - fx) + (card.rgb[at + 3] as number) * fx;
  const bottom = (card.rgb[below] as number) * (1 - fx) + (card.rgb[below + 3] as number) * fx;
  // Ink is not black, nor paper white.
  return 25 + 0.85 * (top * (1 - fy) + bottom * fy);
}
