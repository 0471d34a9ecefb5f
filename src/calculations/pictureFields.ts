import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import type { Picture, Region } from '../photo/picture.ts';
import type { CalculationContext, CalculationResult } from './define.ts';

/** The name of a picture: a file on the terminal, the SHA-256 of a photo of the record over HTTP. */
export const pictureFile = z.string().min(1).max(1000);

/** A rectangle of a picture in whole pixels, x to the right and y down from the top left. */
export const pictureRegion = z.strictObject({
  x: z.int().min(0),
  y: z.int().min(0),
  widthPx: z.int().positive(),
  heightPx: z.int().positive(),
});

/** The picture that an input names, with every region asked for found to lie within it. */
export function namedPicture(
  file: string,
  regions: readonly { path: string; region: Region; leastPx?: number }[],
  { pictures }: CalculationContext,
): CalculationResult<Picture> {
  const picture = pictures?.get(file);
  if (picture === undefined) return { ok: false, faults: [notThere(file)] };
  const faults = regions.flatMap(({ path, region, leastPx = 1 }) =>
    regionFaults(path, region, leastPx, picture),
  );
  return faults.length > 0 ? { ok: false, faults } : { ok: true, output: picture };
}

function regionFaults(path: string, region: Region, leastPx: number, picture: Picture): Fault[] {
  if (region.x + region.widthPx > picture.widthPx || region.y + region.heightPx > picture.heightPx) {
    const message = `This region reaches beyond the picture, which is ${picture.widthPx} by ${picture.heightPx} pixels: draw it within.`;
    return [{ code: 'photo.region-outside', path, message }];
  }
  if (region.widthPx < leastPx || region.heightPx < leastPx) {
    const message = `This region is too small to tell anything by: draw it at least ${leastPx} by ${leastPx} pixels.`;
    return [{ code: 'photo.region-too-small', path, message }];
  }
  return [];
}

function notThere(file: string): Fault {
  const message = `The picture ${file} was not handed in: name a file that is there, or a photo of the record by its SHA-256.`;
  return { code: 'photo.not-there', path: 'file', message };
}
