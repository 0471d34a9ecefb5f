import { describe, expect, test } from 'vitest';
import type { CalculationContext } from './define.ts';
import { runById } from './runById.ts';

const context = { yearNow: 2026 } as CalculationContext;

function faults(id: string, input: object): string[] {
  const result = runById(id, input, context);
  if (result.ok) throw new Error(`no fault: ${JSON.stringify(result.output)}`);
  return result.faults.map(({ path, message }) => `${path}: ${message}`);
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

describe('a number that no picture or piece reaches is refused, not carried on to nothing', () => {
  const outline = [
    [0, 0],
    [100, 0],
    [100, 50],
    [0, 50],
  ];
  test.each([
    ['photo.sagitta', { chordMm: 1e300, sagittaMm: 1 }, 'chordMm: '],
    ['photo.sagitta', { chordMm: 100, sagittaMm: 1e-300 }, 'sagittaMm: '],
    ['photo.twins', { a: [[1e300, 0], ...outline.slice(1)], b: outline }, 'a[0][0]: '],
    ['photo.lens', { points: [[1, 1]], centre: [0, 0], focalPx: [1, 1], k1: 1e300 }, 'k1: '],
    ['photo.circle', { points: [[-1e300, 0], ...outline.slice(1)] }, 'points[0][0]: '],
  ])('%s %o', (id, input, start) => {
    const found = faults(id, input);
    expect(found).toHaveLength(1);
    expect(found[0]?.startsWith(start)).toBe(true);
  });
});
