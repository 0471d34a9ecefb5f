import { describe, expect, test } from 'vitest';
import reference from '../../test/reference/photoGeometry.json' with { type: 'json' };
import { photoLens } from './byHand/photoLens.ts';
import { photoSagitta } from './byHand/photoSagitta.ts';
import { photoCircle, photoEllipse } from './photoGeometry.ts';
import { photoMeasure } from './photoMeasure.ts';
import { photoRectify } from './photoRectify.ts';
import { outputOf } from './testing/outputOf.ts';

// Values and their sources: test/reference/photoGeometry.json.

function near(found: unknown, wanted: unknown, tolerance: number): void {
  const [a, b] = [[found].flat(3) as number[], [wanted].flat(3) as number[]];
  expect(a.length).toBe(b.length);
  for (const [i, value] of b.entries()) {
    const off = Math.abs((a[i] as number) - value);
    expect(off, `${a[i]} for ${value}`).toBeLessThanOrEqual(tolerance);
  }
}

describe('circles and ellipses from outside', () => {
  const methods = ['geometric', 'kasa', 'pratt', 'taubin'] as const;
  test.each(reference.circles)('photo.circle $id, by every method', (each) => {
    for (const method of methods) {
      const found = outputOf(photoCircle, { points: each.points, method });
      near([found.centre, found.radius], [each[method].centre, each[method].radius].flat(), each.tolerance);
    }
    const { residualRms } = outputOf(photoCircle, { points: each.points });
    near(residualRms * Math.sqrt(each.points.length), each.geometric.residualNorm, 1e-9);
  });

  test.each(reference.ellipses)('photo.ellipse $id, direct and geometric', (each) => {
    for (const method of ['direct', 'geometric'] as const) {
      const found = outputOf(photoEllipse, { points: each.points, method });
      const { centre, semiMajor, semiMinor, angleDeg } = each[method];
      near(
        [found.centre, found.semiMajor, found.semiMinor].flat(),
        [centre, semiMajor, semiMinor].flat(),
        each.tolerance,
      );
      near(found.angleDeg, angleDeg, 1e-5);
    }
    const { residualRms } = outputOf(photoEllipse, { points: each.points, method: 'geometric' });
    near(residualRms * Math.sqrt(each.points.length), each.geometric.residualNorm, 1e-6);
  });

  test('photo.sagitta: radius, arc and doubt', () => {
    const { chordSagitta, radius, arcLength, sigma, tolerance } = reference.sagittas;
    for (const [i, [chordMm, sagittaMm]] of chordSagitta.entries()) {
      const found = outputOf(photoSagitta, { chordMm, sagittaMm, sigmaChordMm: 0.5, sigmaSagittaMm: 0.1 });
      near(
        [found.radiusMm, found.arcLengthMm, found.sigmaMm],
        [radius[i], arcLength[i], sigma[i]],
        tolerance,
      );
    }
  });
});

describe('planes from outside', () => {
  test.each(reference.homographies)(
    'photo.rectify $id: the plane as source, the picture as target',
    (each) => {
      const found = outputOf(photoRectify, {
        image: each.targetPoints,
        world: each.sourcePoints,
        errorIn: 'image',
      });
      near(found.toPicture, each.homography, each.tolerance);
      const back = outputOf(photoRectify, {
        image: each.targetPoints,
        world: each.sourcePoints,
        errorIn: 'image',
        map: each.mapped,
      });
      near(back.mapped, each.mapPoints, 5e-3);
      if (each.rms !== undefined) near(found.residualPx, each.rms, 1e-6);
    },
  );

  test.each(reference.homographies)(
    'photo.rectify $id: the other way round, the error in the target',
    (each) => {
      const asked = {
        image: each.sourcePoints,
        world: each.targetPoints,
        map: each.mapPoints,
      };
      const found = outputOf(photoRectify, asked);
      near(found.matrix, each.homography, each.tolerance);
      near(found.mapped, each.mapped, each.tolerance);
    },
  );

  test('a drawer front at a slant: the matrix and two lengths', () => {
    const { imageQuad, matrix, segments, lengthsMm, tolerance } = reference.drawer;
    const world = [
      [0, 0],
      [910, 0],
      [910, 180],
      [0, 180],
    ];
    const found = outputOf(photoRectify, { image: imageQuad, world });
    near(found.matrix, matrix, tolerance);
    for (const [i, points] of segments.entries())
      near(outputOf(photoMeasure, { matrix: found.matrix, points }).lengthMm, lengthsMm[i], tolerance);
  });

  test('the same corners by four sides and both diagonals', () => {
    const distances = {
      sides: [910, 180, 910, 180],
      firstDiagonal: Math.hypot(910, 180),
      secondDiagonal: Math.hypot(910, 180),
    };
    const { imageQuad, matrix } = reference.drawer;
    const found = outputOf(photoRectify, { image: imageQuad, distances });
    near(found.matrix, matrix, 1e-6);
    near(found.misfitMm, 0, 1e-9);
    const one = { sides: distances.sides, secondDiagonal: distances.secondDiagonal };
    near(outputOf(photoRectify, { image: imageQuad, distances: one }).matrix, matrix, 1e-6);
  });

  test.each(reference.lenses)(
    'photo.lens $id, there and back',
    ({ focalPx, centre, terms, normalised, pixels, tolerance }) => {
      const lens = { focalPx, centre, ...terms };
      const points = normalised.map(([x, y]) => [
        (x as number) * (focalPx[0] as number) + (centre[0] as number),
        (y as number) * (focalPx[1] as number) + (centre[1] as number),
      ]);
      near(outputOf(photoLens, { ...lens, way: 'distort', points }).points, pixels, tolerance);
      near(outputOf(photoLens, { ...lens, way: 'straighten', points: pixels }).points, points, tolerance);
    },
  );

  test('four points in a line keep their cross-ratio through any view', () => {
    const { positions, mapped, ratio, tolerance } = reference.crossRatio;
    const places = positions.map((x) => [x, 2 * x]);
    const image = [
      [0, 0],
      [100, 3],
      [96, 110],
      [5, 90],
    ];
    const world = [
      [0, 0],
      [9, 0],
      [9, 16],
      [0, 16],
    ];
    const { toPicture } = outputOf(photoRectify, { image, world });
    const seen = places.map(([x = 0, y = 0]) => {
      const [u, v, w] = toPicture.map(([a, b, c]) => a * x + b * y + c) as [number, number, number];
      return [u / w, v / w];
    });
    const along = (points: number[][]) =>
      points.map(([x = 0, y = 0]) =>
        Math.hypot(x - (points[0]?.[0] as number), y - (points[0]?.[1] as number)),
      );
    for (const line of [positions, mapped, along(seen)]) near(crossRatio(line), ratio, tolerance * 100);
  });
});

function crossRatio([a = 0, b = 0, c = 0, d = 0]: number[]): number {
  return ((c - a) * (d - b)) / ((c - b) * (d - a));
}

test('one known length says that perspective is not corrected', () => {
  const found = outputOf(photoMeasure, {
    scale: {
      points: [
        [0, 0],
        [0, 200],
      ],
      lengthMm: 100,
      sigmaMm: 0.5,
    },
    points: [
      [50, 0],
      [450, 0],
    ],
    sigmaPx: 1,
  });
  expect(found.lengthMm).toBe(200);
  expect(found.says[0]).toMatch(/^Perspective is not corrected/);
  // By hand: 1 px is 0.5 mm; √2·0.5 for the line, √2·200/200 for the known one’s marks, 200·0.5/100 for its length.
  near(found.sigmaMm, Math.hypot(Math.SQRT2 * 0.5, Math.SQRT2, 1), 1e-12);
});
