import { z } from 'zod';
import { refuse } from '../../ground/fault.ts';
import { distorted, undistorted } from '../../photo/geometry/lens.ts';
import type { Point } from '../../photo/picture.ts';
import { defineCalculation } from '../define.ts';
import { pointField, pointsField } from '../photoFields.ts';

/** Terms of real lenses are below 1 or not far above it. */
const lensTerm = z.number().min(-1000).max(1000);

/** `photo.lens`: see its own fields. */
export const photoLens = defineCalculation({
  id: 'photo.lens',
  answers:
    'Where does a lens of known distortion put these points, or where would a perfect lens have put them?',
  method:
    'The radial–tangential model: x′ = x(1 + k1 r² + k2 r⁴ + k3 r⁶) + 2 p1 x y + p2 (r² + 2x²), y′ likewise, in units of the focal length from the principal point. straighten goes the other way by Newton’s method and ' +
    'refuses points where the model folds over.',
  source: 'Brown, Photogrammetric Engineering 37 (1971); form from memory.',
  needsKnowledge: false,
  input: z.strictObject({
    points: pointsField,
    /** distort: from a perfect lens to this one; straighten: back. Pixels both. */
    way: z.enum(['distort', 'straighten']).default('straighten'),
    centre: pointField,
    /** Focal length in pixels, across and down. */
    focalPx: z.tuple([z.number().min(1e-3).max(1e9), z.number().min(1e-3).max(1e9)]),
    k1: lensTerm,
    k2: lensTerm.default(0),
    k3: lensTerm.default(0),
    p1: lensTerm.default(0),
    p2: lensTerm.default(0),
  }),
  output: z.strictObject({ points: z.array(pointField) }),
  example: {
    points: [
      [800, 500],
      [800, 900],
    ],
    way: 'distort',
    centre: [500, 500],
    focalPx: [1000, 1000],
    k1: -0.1,
  },
  run: ({ points, way, centre, focalPx, ...terms }) => {
    const frame = { centre, unitPx: focalPx };
    const moved = points.map((point) => (way === 'distort' ? distorted : undistorted)(terms, frame, point));
    const folded = moved.findIndex((point) => point?.every(Number.isFinite) !== true);
    if (folded < 0)
      return { ok: true, output: { points: (moved as Point[]).map(([x, y]): [number, number] => [x, y]) } };
    const message =
      'No point of a perfect picture comes out here: the distortion folds over; check the terms, or take a point nearer the middle.';
    return refuse('photo.out-of-lens', message, `points[${folded}]`);
  },
});
