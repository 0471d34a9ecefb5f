import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { refuse } from '../ground/fault.ts';
import { type Homography, inverse } from '../photo/geometry/homography.ts';
import { lengthByKnown } from '../photo/geometry/knownLength.ts';
import { unknownLensShare } from '../photo/geometry/lensEstimate.ts';
import { pairFault } from '../photo/geometry/pairFaults.ts';
import {
  angleInPlane,
  lengthInPlane,
  type Measured,
  type MeasureGround,
} from '../photo/geometry/planeMeasure.ts';
import { type CalculationResult, defineCalculation } from './define.ts';
import { lensField, lineField, matrixField, pairPointsField } from './photoFields.ts';

const sigma = z.number().min(0).max(10_000);

const input = z.strictObject({
  /** From the picture to the plane, as `photo.rectify` gives it. */
  matrix: matrixField.optional(),
  /** In place of `matrix`: one known length in a plane that faces the camera. */
  scale: z
    .strictObject({ points: lineField, lengthMm: z.number().positive(), sigmaMm: sigma.default(0) })
    .optional(),
  /** Both ends of the line to be measured, pixels. */
  points: lineField,
  /** A second line: asks for the angle between the two. */
  secondLine: lineField.optional(),
  /** Standard uncertainty of a mark in each direction, pixels. */
  sigmaPx: z.number().min(0).max(10_000).default(1),
  /** The pairs that `matrix` was fitted to; their own doubt where it is not that of the marks. */
  correspondences: z
    .strictObject({
      image: pairPointsField,
      world: pairPointsField,
      sigmaPx: sigma.optional(),
      sigmaMm: sigma.default(0),
    })
    .optional(),
  /** The same pairs, written as for `photo.rectify`. */
  image: pairPointsField.optional(),
  world: pairPointsField.optional(),
  /** The lens, where `photo.rectify` could tell it. */
  lens: lensField.extend({ sigmaK1: z.number().optional() }).optional(),
  /** Where the lens is not known: what is allowed for it, in parts of the length. */
  lensAllowancePercent: z.number().min(0).max(20).optional(),
});
type Input = z.infer<typeof input>;

/** `photo.measure`: see its own fields. */
export const photoMeasure = defineCalculation({
  id: 'photo.measure',
  answers: 'How long is this line of the piece, measured in a photograph, and how sure?',
  method:
    'Both marks are carried to the plane by the matrix; the length is the distance there. Its standard uncertainty is, to first ' +
    'order, the doubt of both marks (sigmaPx in each direction, independent) and that of the pairs behind the matrix, carried through the least-squares fit; ' +
    'where the pairs lie further off than sigmaPx explains, their doubt is raised until it does. Without correspondences the matrix counts as exact. A lens that ' +
    `is not known adds lensAllowancePercent of the length if given (${100 * unknownLensShare} is our usual figure, a judgment). With scale instead of a ` +
    'matrix it is the rule of three: perspective is not corrected. With secondLine the angle between both lines, as they run from first to second mark, 0–180°.',
  source:
    'JCGM 100:2008 (GUM), 5.2, for the propagation; the slopes of the fitted view are ours, held against drawn samples.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    lengthMm: z.number(),
    /** Standard uncertainty, k = 1, of all shares together. */
    sigmaMm: z.number(),
    shares: z.strictObject({ marksMm: z.number(), pairsMm: z.number(), lensMm: z.number() }),
    angleDeg: z.number().optional(),
    angleSigmaDeg: z.number().optional(),
    /** What has to be known beside the figures. */
    says: z.array(z.string()),
  }),
  example: {
    matrix: [
      [0.5846984594134, -0.03123018477579, -114.02487463694],
      [-0.032597359844148, 0.49516941858492, -150.55323482305],
      [-0.00010116827084406, -8.0799762520201e-5, 1],
    ],
    points: [
      [400, 400],
      [900, 430],
    ],
    sigmaPx: 1,
    correspondences: {
      image: [
        [212, 318],
        [1488, 402],
        [1470, 690],
        [230, 655],
      ],
      world: [
        [0, 0],
        [910, 0],
        [910, 180],
        [0, 180],
      ],
    },
  },
  run: (asked) => {
    const found = asked.scale === undefined ? byMatrix(asked) : byScale(asked, asked.scale);
    if (!found.ok) return found;
    const { length, angle, says } = found.output;
    const lensMm = ((asked.lensAllowancePercent ?? 0) / 100) * length.value;
    return {
      ok: true,
      output: {
        lengthMm: length.value,
        sigmaMm: Math.hypot(length.sigma, lensMm),
        shares: { marksMm: length.fromMarks, pairsMm: length.fromPairs, lensMm },
        ...(angle === undefined
          ? {}
          : { angleDeg: degrees(angle.value), angleSigmaDeg: degrees(angle.sigma) }),
        says: [...says, ...lensSaying(asked)],
      },
    };
  },
});

type Found = { length: Measured; angle?: Measured; says: string[] };

function byScale(asked: Input, scale: NonNullable<Input['scale']>): CalculationResult<Found> {
  if (asked.matrix !== undefined)
    return refused('scale', 'Give a matrix or one known length, not both: they may disagree.');
  if (asked.secondLine !== undefined)
    return refused(
      'secondLine',
      'One known length does not correct perspective, so an angle can’t be measured by it: mark four points of known place.',
    );
  const length = lengthByKnown(scale, asked.points, asked.sigmaPx);
  if (length === undefined || length.fromPairs === Number.POSITIVE_INFINITY)
    return refused('scale.points', 'Both marks of the known length are the same: mark its two ends.');
  const says = [
    'Perspective is not corrected: this holds only where the plane faces the camera squarely and both lines lie in it, best side by side.',
  ];
  return { ok: true, output: { length, says } };
}

function byMatrix(asked: Input): CalculationResult<Found> {
  const { matrix, points, secondLine, sigmaPx, lens } = asked;
  if (matrix === undefined)
    return refused('matrix', 'Give the matrix that photo.rectify found, or one known length as `scale`.');
  if (isSingular(matrix))
    return refused(
      'matrix',
      'This matrix does not carry a picture to a plane: take the one that photo.rectify gives.',
    );
  const pairs = pairsOf(asked);
  if (!pairs.ok) return pairs;
  const ground: MeasureGround = {
    view: {
      toPicture: inverse(matrix),
      ...(lens === undefined
        ? {}
        : {
            lens: {
              k1: lens.k1,
              frame: { centre: lens.centre, unitPx: [lens.unitPx, lens.unitPx] as const },
            },
          }),
    },
    sigmaPx,
    ...(pairs.output === undefined ? {} : { pairs: pairs.output }),
  };
  const length = lengthInPlane(ground, points);
  if (length === undefined || !Number.isFinite(length.value)) return refused('points', beyond);
  if (!Number.isFinite(length.fromPairs))
    return refused(
      'correspondences',
      'These pairs do not go with this matrix: give those that it was fitted to.',
    );
  const says =
    pairs.output === undefined
      ? ['The matrix counts as exact, since the pairs behind it were not given: the true doubt is larger.']
      : [];
  if (secondLine === undefined) return { ok: true, output: { length, says } };
  const angle = angleInPlane(ground, points, secondLine);
  if (angle === undefined || !Number.isFinite(angle.sigma)) return refused('secondLine', beyond);
  return { ok: true, output: { length, angle, says } };
}

const beyond =
  'A mark lies on or beyond the horizon of the plane, or both ends of a line are one: mark two points of the plane itself.';

function pairsOf({
  correspondences,
  image,
  world,
  sigmaPx,
}: Input): CalculationResult<MeasureGround['pairs']> {
  const given =
    correspondences ?? (image && world ? { image, world, sigmaMm: 0, sigmaPx: undefined } : undefined);
  if (given === undefined) return { ok: true, output: undefined };
  const fault = pairFault(given);
  if (fault !== undefined) {
    const path = correspondences === undefined ? fault.path : `correspondences.${fault.path}`;
    return { ok: false, faults: [{ ...fault, path }] };
  }
  return { ok: true, output: { ...given, sigmaPx: given.sigmaPx ?? sigmaPx } };
}

function isSingular(matrix: Homography): boolean {
  const [[a, b, c], [d, e, f], [g, h, i]] = matrix;
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  const size = matrix.reduce((product, row) => product * Math.hypot(...row), 1);
  return !(Math.abs(determinant) > 1e-14 * size);
}

function lensSaying({ lens, lensAllowancePercent }: Input): string[] {
  if (lens !== undefined) return [];
  if (lensAllowancePercent !== undefined)
    return [`The bend of the lens is not known: ${lensAllowancePercent} % of the length is allowed for it.`];
  return ['The bend of the lens is not known, and nothing is allowed for it.'];
}

function refused(path: string, message: string): { ok: false; faults: Fault[] } {
  return refuse('photo.measure', message, path);
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
