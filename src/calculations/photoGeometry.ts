import { z } from 'zod';
import { algebraicCircle } from '../photo/geometry/circleAlgebraic.ts';
import { fitCircle, rmsOffCircle } from '../photo/geometry/circleFit.ts';
import { directEllipse } from '../photo/geometry/ellipseDirect.ts';
import { fitEllipse, rmsOffEllipse } from '../photo/geometry/ellipseFit.ts';
import type { Point } from '../photo/picture.ts';
import { type CalculationResult, defineCalculation } from './define.ts';
import { pointField, pointsField } from './photoFields.ts';

/** `photo.circle`: see its own fields. */
export const photoCircle = defineCalculation({
  id: 'photo.circle',
  answers: 'Which circle do these points lie on, of what radius, and how sure?',
  method:
    'Geometric, as usual: the squares of the distances from the circle are made smallest by Gauss–Newton from Taubin’s algebraic circle. kasa, pratt and taubin give the ' +
    'algebraic circles themselves; kasa draws short arcs too small. sigma is the standard uncertainty of the radius, from the scatter of the points about the circle (n − 3 free) ' +
    'but no less than sigmaPoint explains; three points have no scatter, and without sigmaPoint no sigma. Points must not be strung along a mark in a way that errs together.',
  source:
    'Gander, Golub and Strebel, BIT 34 (1994), for the geometric circle; Kåsa (1976), Pratt (1987) and Taubin (1991) as in Chernov, Circular and Linear Regression (2010); from memory.',
  needsKnowledge: false,
  input: z.strictObject({
    /** In pixels or millimetres: the answer is in the same unit. */
    points: pointsField.min(3),
    method: z.enum(['geometric', 'taubin', 'pratt', 'kasa']).default('geometric'),
    /** Standard uncertainty of a point in each direction, where known. */
    sigmaPoint: z.number().positive().optional(),
  }),
  output: z.strictObject({
    centre: pointField,
    radius: z.number(),
    /** Of the radius; null where it can’t be told. */
    sigma: z.number().nullable(),
    sigmaCentre: pointField.nullable(),
    /** Root mean square distance of the points from the circle. */
    residualRms: z.number(),
  }),
  example: {
    points: [
      [1, 7],
      [2, 6],
      [5, 8],
      [7, 7],
      [9, 5],
      [3, 7],
    ],
  },
  run: ({ points, method, sigmaPoint }) => {
    if (method !== 'geometric') {
      const circle = algebraicCircle(points, method);
      if (circle === undefined) return tooStraight;
      const residualRms = rmsOffCircle(points, circle);
      const { centre, radius } = circle;
      return {
        ok: true,
        output: { centre: xy(centre), radius, sigma: null, sigmaCentre: null, residualRms },
      };
    }
    const fitted = fitCircle(points, sigmaPoint);
    if (fitted === undefined) return tooStraight;
    const { centre, radius, sigma = null, sigmaCentre, residualRms } = fitted;
    return {
      ok: true,
      output: {
        centre: xy(centre),
        radius,
        sigma,
        sigmaCentre: sigmaCentre ? xy(sigmaCentre) : null,
        residualRms,
      },
    };
  },
});

const tooStraight: CalculationResult<never> = {
  ok: false,
  faults: [
    {
      code: 'photo.too-straight',
      path: 'points',
      message:
        'These points lie in one line, or all in one place, as far as can be told: mark a longer piece of the arc.',
    },
  ],
};

/** `photo.ellipse`: see its own fields. */
export const photoEllipse = defineCalculation({
  id: 'photo.ellipse',
  answers: 'Which ellipse do these points lie on?',
  method:
    'direct, as usual: the conic ax² + bxy + cy² + dx + ey + f of least algebraic error under 4ac − b² = 1, in the numerically stable form, in normalized coordinates. geometric: from there ' +
    'Gauss–Newton on the distances from the ellipse, with standard uncertainties from the scatter (n − 5 free). The two differ where the points are few, far off, or on a short arc: ' +
    'the direct one is drawn too small there. angleDeg is that of the long axis from the x axis, from 0 to below 180, toward the y axis (clockwise to the eye where y runs down); it means nothing on a circle.',
  source:
    'Fitzgibbon, Pilu and Fisher, IEEE PAMI 21 (1999), in the form of Halíř and Flusser, WSCG (1998); distances to the ellipse after Eberly (2013); from memory.',
  needsKnowledge: false,
  input: z.strictObject({
    points: pointsField.min(5),
    method: z.enum(['direct', 'geometric']).default('direct'),
  }),
  output: z.strictObject({
    centre: pointField,
    semiMajor: z.number(),
    semiMinor: z.number(),
    angleDeg: z.number(),
    /** Root mean square distance of the points from the ellipse. */
    residualRms: z.number(),
    /** Standard uncertainties, of the geometric ellipse through more than five points. */
    sigma: z
      .strictObject({
        centre: pointField,
        semiMajor: z.number(),
        semiMinor: z.number(),
        angleDeg: z.number(),
      })
      .optional(),
  }),
  example: {
    points: [
      [937.97, 368.12],
      [845.07, 523.47],
      [598.22, 593.48],
      [383.92, 524.64],
      [361.75, 370.32],
      [549.24, 245.1],
      [805.77, 244.48],
    ],
  },
  run: ({ points, method }) => {
    const fitted = method === 'geometric' ? fitEllipse(points) : undefined;
    const ellipse = method === 'geometric' ? fitted?.ellipse : directEllipse(points);
    if (ellipse === undefined) return noEllipse;
    const { centre, semiMajor, semiMinor, angleRad } = ellipse;
    const sigma = fitted?.sigma;
    return {
      ok: true,
      output: {
        centre: xy(centre),
        semiMajor,
        semiMinor,
        angleDeg: degrees(angleRad),
        residualRms: rmsOffEllipse(points, ellipse),
        ...(sigma === undefined
          ? {}
          : {
              sigma: {
                centre: xy(sigma.centre),
                semiMajor: sigma.semiMajor,
                semiMinor: sigma.semiMinor,
                angleDeg: degrees(sigma.angleRad),
              },
            }),
      },
    };
  },
});

const noEllipse: CalculationResult<never> = {
  ok: false,
  faults: [
    {
      code: 'photo.no-ellipse',
      path: 'points',
      message:
        'These points do not tell an ellipse from a line: mark at least five different points, spread round as much of the edge as can be seen.',
    },
  ],
};

function xy([x, y]: Point): [number, number] {
  return [x, y];
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
