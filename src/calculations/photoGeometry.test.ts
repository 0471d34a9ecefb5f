import { describe, expect, test } from 'vitest';
import reference from '../../test/reference/photoGeometry.json' with { type: 'json' };
import type { CalculationContext } from './define.ts';
import { runCalculation } from './runCalculation.ts';

// Values and their sources: test/reference/photoGeometry.json.

const context = { yearNow: 2026 } as CalculationContext;

// biome-ignore lint/suspicious/noExplicitAny: outputs of several calculations, checked field by field
function output(id: string, input: object): any {
  const result = runCalculation(id, input, context);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.output;
}

function faults(id: string, input: object): string[] {
  const result = runCalculation(id, input, context);
  if (result.ok) throw new Error(`no fault: ${JSON.stringify(result.output)}`);
  return result.faults.map(({ path, message }) => `${path}: ${message}`);
}

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
      const found = output('photo.circle', { points: each.points, method });
      near([found.centre, found.radius], [each[method].centre, each[method].radius].flat(), each.tolerance);
    }
    const { residualRms } = output('photo.circle', { points: each.points });
    near(residualRms * Math.sqrt(each.points.length), each.geometric.residualNorm, 1e-9);
  });

  test.each(reference.ellipses)('photo.ellipse $id, direct and geometric', (each) => {
    for (const method of ['direct', 'geometric'] as const) {
      const found = output('photo.ellipse', { points: each.points, method });
      const { centre, semiMajor, semiMinor, angleDeg } = each[method];
      near(
        [found.centre, found.semiMajor, found.semiMinor].flat(),
        [centre, semiMajor, semiMinor].flat(),
        each.tolerance,
      );
      near(found.angleDeg, angleDeg, 1e-5);
    }
    const { residualRms } = output('photo.ellipse', { points: each.points, method: 'geometric' });
    near(residualRms * Math.sqrt(each.points.length), each.geometric.residualNorm, 1e-6);
  });

  test('photo.sagitta: radius, arc and doubt', () => {
    const { chordSagitta, radius, arcLength, sigma, tolerance } = reference.sagittas;
    for (const [i, [chordMm, sagittaMm]] of chordSagitta.entries()) {
      const found = output('photo.sagitta', { chordMm, sagittaMm, sigmaChordMm: 0.5, sigmaSagittaMm: 0.1 });
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
      const found = output('photo.rectify', { image: each.targetPoints, world: each.sourcePoints });
      near(found.toPicture, each.homography, each.tolerance);
      const back = output('photo.rectify', {
        image: each.targetPoints,
        world: each.sourcePoints,
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
        errorIn: 'world',
        map: each.mapPoints,
      };
      const found = output('photo.rectify', asked);
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
    const found = output('photo.rectify', { image: imageQuad, world });
    near(found.matrix, matrix, tolerance);
    for (const [i, points] of segments.entries())
      near(output('photo.measure', { matrix: found.matrix, points }).lengthMm, lengthsMm[i], tolerance);
  });

  test('the same corners by four sides and both diagonals', () => {
    const distances = {
      sides: [910, 180, 910, 180],
      firstDiagonal: Math.hypot(910, 180),
      secondDiagonal: Math.hypot(910, 180),
    };
    const { imageQuad, matrix } = reference.drawer;
    const found = output('photo.rectify', { image: imageQuad, distances });
    near(found.matrix, matrix, 1e-6);
    near(found.misfitMm, 0, 1e-9);
    const one = { sides: distances.sides, secondDiagonal: distances.secondDiagonal };
    near(output('photo.rectify', { image: imageQuad, distances: one }).matrix, matrix, 1e-6);
  });

  test.each(reference.lenses)(
    'photo.lens $id, there and back',
    ({ focalPx, centre, terms, normalised, pixels, tolerance }) => {
      const lens = { focalPx, centre, ...terms };
      const points = normalised.map(([x, y]) => [
        (x as number) * (focalPx[0] as number) + (centre[0] as number),
        (y as number) * (focalPx[1] as number) + (centre[1] as number),
      ]);
      near(output('photo.lens', { ...lens, way: 'distort', points }).points, pixels, tolerance);
      near(output('photo.lens', { ...lens, way: 'straighten', points: pixels }).points, points, tolerance);
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
    const { toPicture } = output('photo.rectify', { image, world });
    const seen = places.map(([x = 0, y = 0]) => {
      const [u, v, w] = toPicture.map(
        (row: number[]) => (row[0] as number) * x + (row[1] as number) * y + (row[2] as number),
      );
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

describe('what can’t be answered says what to do', () => {
  const square = [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ];
  test.each([
    [
      'three points',
      { image: square.slice(1), world: square.slice(1) },
      /^image: Three points cannot fix a plane: mark at least four/,
    ],
    [
      'unlike counts',
      { image: square, world: square.slice(1) },
      /^world: There are 4 points in the picture and 3 known places/,
    ],
    [
      'three in line',
      {
        image: [
          [0, 0],
          [50, 0],
          [100, 0],
          [0, 100],
        ],
        world: square,
      },
      /^image: Points 1, 2 and 3 lie in one line in the picture/,
    ],
    [
      'three in line on the piece',
      {
        image: square,
        world: [
          [0, 0],
          [100, 0],
          [50, 0],
          [0, 100],
        ],
      },
      /^world: Points 1, 2 and 3 lie in one line on the piece/,
    ],
    [
      'one point twice',
      {
        image: [
          [0, 0],
          [0, 0],
          [100, 100],
          [0, 100],
        ],
        world: square,
      },
      /^image\[1\]: Points 1 and 2 are the same in the picture/,
    ],
    [
      'all but one in line',
      {
        image: [0, 1, 2, 3, 4].map((i) => [i * 30, i * 20]).concat([[100, 0]]),
        world: [0, 1, 2, 3, 4].map((i) => [i * 10, 0]).concat([[20, 40]]),
      },
      /^image: All points, or all but one, lie in one line/,
    ],
    [
      'corners in another order',
      {
        image: square,
        world: [
          [0, 0],
          [100, 0],
          [0, 100],
          [100, 100],
        ],
      },
      /beyond the horizon of the plane.*go round both the same way/,
    ],
    ['no places', { image: square }, /^world: Give the places .* or the distances/],
    [
      'sides without a diagonal',
      { image: square, distances: { sides: [1, 1, 1, 1] } },
      /^distances: .* measure a diagonal/,
    ],
    [
      'lengths that do not close',
      { image: square, distances: { sides: [1, 1, 1, 1], firstDiagonal: 3 } },
      /^distances: These lengths do not close/,
    ],
  ])('photo.rectify: %s', (_, input, wanted) => {
    const found = faults('photo.rectify', input);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(wanted);
    expect(found[0]).toMatch(/\.$/);
  });

  test.each([
    [
      'no ground',
      {
        points: [
          [0, 0],
          [1, 1],
        ],
      },
      /^matrix: Give the matrix that photo\.rectify found/,
    ],
    [
      'a matrix that is none',
      {
        matrix: [
          [1, 0, 0],
          [2, 0, 0],
          [0, 0, 1],
        ],
        points: [
          [0, 0],
          [1, 1],
        ],
      },
      /^matrix: This matrix does not carry/,
    ],
    [
      'beyond the horizon',
      {
        matrix: [
          [1, 0, 0],
          [0, 1, 0],
          [0, -0.01, 1],
        ],
        points: [
          [0, 0],
          [0, 200],
        ],
      },
      /^points: A mark lies on or beyond the horizon/,
    ],
    [
      'a known length of nothing',
      {
        scale: {
          points: [
            [5, 5],
            [5, 5],
          ],
          lengthMm: 10,
        },
        points: [
          [0, 0],
          [1, 1],
        ],
      },
      /^scale\.points: Both marks/,
    ],
    [
      'an angle by one length',
      {
        scale: {
          points: [
            [5, 5],
            [5, 9],
          ],
          lengthMm: 10,
        },
        points: [
          [0, 0],
          [1, 1],
        ],
        secondLine: [
          [0, 0],
          [1, 0],
        ],
      },
      /^secondLine: .* four points/,
    ],
  ])('photo.measure: %s', (_, input, wanted) => {
    expect(faults('photo.measure', input)[0]).toMatch(wanted);
  });

  test('points in line or in one place are no circle and no ellipse', () => {
    const line = [0, 1, 2, 3, 4, 5].map((i) => [i * 10.1, i * 3.3 + 7]);
    const spot = line.map(() => [4, 4]);
    for (const points of [line, spot]) {
      for (const method of ['geometric', 'kasa', 'pratt', 'taubin'])
        expect(faults('photo.circle', { points, method })[0]).toMatch(/mark a longer piece of the arc\.$/);
      for (const method of ['direct', 'geometric'])
        expect(faults('photo.ellipse', { points, method })[0]).toMatch(/mark at least five different points/);
    }
    expect(faults('photo.circle', { points: line.slice(0, 2) })[0]).toMatch(/at least 3 entries/);
  });

  test('a lens that folds over', () => {
    const lens = {
      centre: [0, 0],
      focalPx: [100, 100],
      k1: -0.5,
      points: [
        [10, 0],
        [90, 0],
      ],
    };
    expect(faults('photo.lens', lens)[0]).toMatch(/^points\[1\]: No point of a perfect picture/);
  });
});

test('one known length says that perspective is not corrected', () => {
  const found = output('photo.measure', {
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
