import { mapped } from '../../../photo/geometry/homography.ts';
import { rectifyPlane } from '../../../photo/geometry/rectify.ts';
import { cardPatches } from '../../../photo/geometry/scaleCard.ts';
import type { Point, Region } from '../../../photo/picture.ts';

export type Patch = { region: Region; nominal: string };

/**
 * Where the grey patches of the scale card lie in a picture, as upright rectangles well inside each.
 *
 * Method: the middle of each patch and a box of half its sides about it are carried to the picture by the view that the card’s
 * corners fix; the largest upright rectangle that the four sides leave about the middle is taken.
 *
 * @returns patches of at least 6 pixels a side; greys only, since a printer’s colours can be off by much
 */
export function cardRegions(
  image: readonly Point[],
  world: readonly Point[],
  size: { widthPx: number; heightPx: number },
): Patch[] {
  const fitted = rectifyPlane({ image, world });
  if (fitted === undefined) return [];
  const toPicture = fitted.view.toPicture;
  return cardPatches
    .filter(({ kind }) => kind === 'grey')
    .flatMap(({ xMm, yMm, widthMm, heightMm, srgb }) => {
      const [cx, cy] = [xMm + widthMm / 2, yMm + heightMm / 2];
      const place = (x: number, y: number) => mapped(toPicture, [x, y]).point;
      const middle = place(cx, cy);
      const sides = [
        place(cx - widthMm / 3, cy),
        place(cx + widthMm / 3, cy),
        place(cx, cy - heightMm / 3),
        place(cx, cy + heightMm / 3),
      ];
      const near = Math.min(...sides.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1])));
      const half = near / Math.SQRT2;
      const region = {
        x: Math.round(middle[0] - half),
        y: Math.round(middle[1] - half),
        widthPx: Math.floor(2 * half),
        heightPx: Math.floor(2 * half),
      };
      const within =
        region.x >= 0 &&
        region.y >= 0 &&
        region.x + region.widthPx <= size.widthPx &&
        region.y + region.heightPx <= size.heightPx;
      return within && region.widthPx >= 6 ? [{ region, nominal: srgb }] : [];
    });
}
