import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { refuse } from '../ground/fault.ts';
import { inverse, mapped, scaledToOne } from '../photo/geometry/homography.ts';
import { undistorted } from '../photo/geometry/lens.ts';
import { estimateLens } from '../photo/geometry/lensEstimate.ts';
import { pairFault } from '../photo/geometry/pairFaults.ts';
import type { Pairs } from '../photo/geometry/planeView.ts';
import { quadFromDistances } from '../photo/geometry/quadFromDistances.ts';
import { type FittedView, rectifyPlane, residualOf } from '../photo/geometry/rectify.ts';
import type { Point } from '../photo/picture.ts';
import { type CalculationResult, defineCalculation } from './define.ts';
import { lensField, matrixField, pairPointsField, pointField, pointsField } from './photoFields.ts';

const length = z.number().positive();

const input = z.strictObject({
  /** Marks in the picture, pixels, y down. */
  image: pairPointsField,
  /** The places they show, in the plane of the piece, mm; in the same order. */
  world: pairPointsField.optional(),
  /** In place of `world`, for four marks: the sides from each to the next, and one or both diagonals (1st–3rd, 2nd–4th). */
  distances: z
    .strictObject({
      sides: z.tuple([length, length, length, length]),
      firstDiagonal: length.optional(),
      secondDiagonal: length.optional(),
    })
    .optional(),
  /**
   * Where the squares are made smallest: in the plane, onto which the matrix carries, as is usual; or in the picture, which is
   * right where the places are known and the marks are not. Four pairs fit either way.
   */
  errorIn: z.enum(['image', 'world']).default('world'),
  /** Width and height of the whole, uncropped picture: asks for the bend of the lens as well. */
  pictureSize: z.tuple([length, length]).optional(),
  /** Points of the picture to carry to the plane besides. */
  map: pointsField.optional(),
});
type Input = z.infer<typeof input>;

/** `photo.rectify`: see its own fields. */
export const photoRectify = defineCalculation({
  id: 'photo.rectify',
  answers: 'How does this picture show a plane of the piece, judged by marks of known place?',
  method:
    'The 3 × 3 matrix carries [x, y, 1] of the picture to [w·X, w·Y, w] of the plane (from picture to plane; `toPicture` goes the ' +
    'other way), its last number 1. Four pairs fix it; of more the direct linear transformation in normalized coordinates gives a ' +
    'start, and Gauss–Newton makes the squares of the distances in the plane smallest, between each place and where its mark ' +
    'comes out (with errorIn image: of the distances in the picture, the right way where the marks are what is unsure). residualPx is told in the picture either way. With pictureSize one radial term of the lens is fitted along where at least 12 marks fix it; the matrix then ' +
    'holds for points that have been straightened by it. Else the lens is said to be unknown.',
  source:
    'Hartley and Zisserman, Multiple View Geometry in Computer Vision (2nd ed., 2003), chapter 4; the radial term after Brown (1971); both from memory.',
  needsKnowledge: false,
  input,
  output: z.strictObject({
    /** From the picture to the plane. */
    matrix: matrixField,
    /** From the plane to the picture. */
    toPicture: matrixField,
    /** Root mean square of the distances between marks and where their places come out. */
    residualPx: z.number(),
    /** The pair that fits worst, counted from 0. */
    worst: z.strictObject({ index: z.number(), residualPx: z.number() }),
    /** True where the plane is seen as in a looking glass: its y runs up, or the marks go round the other way. */
    mirrored: z.boolean(),
    lens: lensField.extend({ sigmaK1: z.number() }).optional(),
    mapped: z.array(pointField).optional(),
    /** The places that followed from `distances`, and how far six lengths disagree, mm. */
    world: z.array(pointField).optional(),
    misfitMm: z.number().optional(),
    /** What has to be known beside the figures. */
    says: z.array(z.string()),
  }),
  example: {
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
  run: (asked) => {
    const placed = placesOf(asked);
    if (!placed.ok) return placed;
    const { world, misfitMm } = placed.output;
    const pairs: Pairs = { image: asked.image, world };
    const fault = pairFault(pairs);
    if (fault !== undefined) return { ok: false, faults: [fault] };
    const lens = asked.pictureSize && estimateLens(pairs, ...asked.pictureSize);
    const fitted = lens?.known ? lens.fitted : fittedBy(asked, pairs);
    if (fitted === undefined) return { ok: false, faults: [unsettled] };
    const toPicture = scaledToOne(fitted.view.toPicture);
    const matrix = inverse(toPicture);
    const straight = (point: Point) =>
      lens?.known ? undistorted({ k1: lens.k1 }, lens.frame, point) : point;
    const points = asked.map?.map(straight);
    const folded = points?.indexOf(undefined) ?? -1;
    if (folded >= 0) return { ok: false, faults: [outOfLens(folded)] };
    return {
      ok: true,
      output: {
        matrix: matrix.map((row) => [...row]) as Matrix,
        toPicture: toPicture.map((row) => [...row]) as Matrix,
        residualPx: fitted.residualPx,
        worst: fitted.worst,
        mirrored: isMirrored(pairs, matrix),
        ...(lens?.known
          ? {
              lens: {
                k1: lens.k1,
                sigmaK1: lens.sigmaK1,
                centre: [...lens.frame.centre] as [number, number],
                unitPx: lens.frame.unitPx[0],
              },
            }
          : {}),
        ...(points === undefined
          ? {}
          : { mapped: points.map((point) => [...mapped(matrix, point as Point).point] as [number, number]) }),
        ...(misfitMm === undefined
          ? {}
          : { world: world.map(([x, y]) => [x, y] as [number, number]), misfitMm }),
        says: sayingsOf(asked, lens?.known === false ? lens.why : undefined, lens?.known === true),
      },
    };
  },
});

type Matrix = z.infer<typeof matrixField>;

function placesOf({
  image,
  world,
  distances,
}: Input): CalculationResult<{ world: Point[]; misfitMm?: number }> {
  if ((world === undefined) === (distances === undefined)) {
    const message =
      'Give the places that the marks show as `world`, or the distances between four marks as `distances`: one of the two.';
    return refuse('photo.no-places', message, 'world');
  }
  if (world !== undefined) return { ok: true, output: { world } };
  const { sides, firstDiagonal, secondDiagonal } = distances as NonNullable<Input['distances']>;
  if (image.length !== 4)
    return distancesFault(
      'image',
      'Distances go with four marks, in turn round the outline: mark the four corners.',
    );
  if (firstDiagonal === undefined && secondDiagonal === undefined)
    return distancesFault(
      'distances',
      'Four sides alone leave the shape open: measure a diagonal as well, or both.',
    );
  const quad = quadFromDistances({
    sides,
    diagonals: {
      ...(firstDiagonal === undefined ? {} : { first: firstDiagonal }),
      ...(secondDiagonal === undefined ? {} : { second: secondDiagonal }),
    },
  });
  if (quad === undefined)
    return distancesFault(
      'distances',
      'These lengths do not close: one is longer than the way round by the others; measure again.',
    );
  return { ok: true, output: { world: quad.corners, misfitMm: quad.misfit } };
}

function distancesFault(path: string, message: string): { ok: false; faults: Fault[] } {
  return refuse('photo.distances', message, path);
}

function fittedBy({ errorIn }: Input, pairs: Pairs): FittedView | undefined {
  if (errorIn === 'image') return rectifyPlane(pairs);
  const turned = rectifyPlane({ image: pairs.world, world: pairs.image });
  if (turned === undefined) return undefined;
  const view = { toPicture: inverse(turned.view.toPicture) };
  return { ...turned, view, ...residualOf(view, pairs) };
}

function isMirrored({ image: [first] }: Pairs, matrix: Matrix | ReturnType<typeof inverse>): boolean {
  const [[a, b, c], [d, e, f], [g, h, i]] = matrix as Matrix;
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  const { w } = mapped(matrix as Matrix, first as Point);
  return determinant * w ** 3 < 0;
}

function sayingsOf(
  { image, distances }: Input,
  lensUnknown: string | undefined,
  lensKnown: boolean,
): string[] {
  return [
    ...(image.length === 4
      ? ['Four marks leave nothing over to show a wrong one: check one length that you know.']
      : []),
    ...(distances === undefined
      ? []
      : ['The plane is laid out from the distances: its corners are as good as they are.']),
    ...(lensKnown ? [] : [lensSaying(lensUnknown)]),
    'Lengths hold only for what lies in the plane of the marks.',
  ];
}

function lensSaying(why: string | undefined): string {
  const unknown =
    why === undefined ? 'The bend of the lens is not known.' : `The bend of the lens is not known. ${why}`;
  return `${unknown} Allow for it in lengths measured far from the marks.`;
}

const unsettled: Fault = {
  code: 'photo.unsettled',
  path: 'image',
  message:
    'No view fits these pairs: the marks are not in the order of their places, or one is misplaced; check them one by one.',
};

function outOfLens(index: number): Fault {
  return {
    code: 'photo.out-of-lens',
    path: `map[${index}]`,
    message: 'This point lies where the lens term no longer holds: choose one inside the picture.',
  };
}
