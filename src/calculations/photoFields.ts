import { z } from 'zod';

/** No picture and no piece reaches so far; beyond it the arithmetic would lose what it measures. */
const coordinate = z.number().min(-1e9).max(1e9);

/** A place in a picture in pixels, or in a plane in millimetres: [x, y]. */
export const pointField = z.tuple([coordinate, coordinate]);
export const lineField = z.tuple([pointField, pointField]);
export const pointsField = z.array(pointField).max(100_000);
/** Marks with a known place, or such places: more than a card has by far. */
export const pairPointsField = z.array(pointField).max(2000);
const row = z.tuple([z.number(), z.number(), z.number()]);
export const matrixField = z.tuple([row, row, row]);

/** A lens whose radial term is known: the middle of the picture, and the radius that the term is counted in, in pixels. */
export const lensField = z.strictObject({
  k1: z.number().min(-1).max(1),
  centre: pointField,
  unitPx: z.number().positive(),
});
