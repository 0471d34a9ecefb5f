import { describe, expect, it } from 'vitest';
import { extentOf } from './extentOf.ts';
import { readPath } from './path.ts';
import { pathData } from './pathData.ts';
import { shapeRuns } from './shapeRuns.ts';

const lengths = { half: 100, high: 40 };

function runs(text: string, mirror = false) {
  const read = readPath(text, lengths, mirror);
  if (!read.ok) throw new Error(read.message);
  return read.runs;
}

describe('readPath', () => {
  it('draws an outline of straight lines and sums', () => {
    expect(pathData(shapeRuns(runs('M 0 0 L half 0 half high/2 0 high/2 Z'), 'none'))).toMatch(/^M .* Z$/);
    expect(extentOf(runs('M 0 0 L half 0 half high/2 0 high/2 Z'))).toEqual([0, 0, 100, 20]);
  });

  it('takes an ellipse to its radii and a rectangle to its corners', () => {
    for (const [box, text] of [
      [[-30, -10, 60, 20], 'O 0 0 30 10'],
      [[5, 6, 70, 8], 'R 5 6 70 8 3'],
    ] as const) {
      extentOf(runs(text)).forEach((mm, i) => void expect(mm, text).toBeCloseTo(box[i] as number, 9));
    }
  });

  it('draws a named shape wherever it is called, and within another', () => {
    const shapes = {
      knob: { of: ['x', 'y'], path: 'O x y 10 10' },
      pair: { of: ['apart'], path: '@knob -apart/2 high @knob apart/2 high' },
    };
    const read = readPath('M 0 0 L 1 1 @pair half', lengths, false, shapes);
    expect(read.ok && extentOf(read.runs.slice(1))).toEqual([-60, 30, 120, 20]);
  });

  it('refuses a shape that is not named, one given too little, and one that calls itself', () => {
    const shapes = { knob: { of: ['x', 'y'], path: 'O x y 10 10' }, ring: { of: [], path: '@ring' } };
    for (const [text, said] of [
      ['@nob 1 2', 'No shape named "nob"'],
      ['@knob 1', '"@knob" takes x, y.'],
      ['@ring', 'No shape named "ring"'],
      ['@toString', 'No shape named "toString"'],
    ] as const) {
      const read = readPath(text, lengths, false, shapes);
      expect(read.ok ? '' : read.message, text).toContain(said);
    }
  });

  it('lays a smooth line through every point given', () => {
    const [run] = runs('M 0 0 ~ 30 40 60 35 100 0 Z');
    expect(run?.curves.slice(0, 3).map(([, , end]) => end)).toEqual([
      [30, 40],
      [60, 35],
      [100, 0],
    ]);
  });

  it('crosses the middle square where a smooth outline meets its mirror', () => {
    const [run] = runs('M 0 50 ~ 40 30 80 45 L 80 0 0 0', true);
    // The first control point stands level with the start: no kink at the middle.
    expect(run?.curves[0]?.[0][1]).toBeCloseTo(50, 9);
  });

  it('completes a turning at its axis, with a line across at its arris only', () => {
    // A cup above a fillet: the corner at y = 10 is an arris, the smooth swelling above it is none.
    const standing = runs('M 12 0 L 12 10 ~ 20 20 16 30 8 40 T 5');
    expect(standing.map(({ incised }) => incised)).toEqual([false, true]);
    expect(extentOf(standing.slice(1))).toEqual([-2, 10, 14, 0]);
    const [left, , width] = extentOf(standing);
    expect(left + width / 2).toBeCloseTo(5, 9);
    const lying = runs('M 0 12 L 10 12 ~ 20 20 30 16 40 8 S 5');
    expect(extentOf(lying.slice(1))).toEqual([10, -2, 0, 14]);
  });

  it.each([
    ['T 4', /before "M x y"/],
    ['I 0 0 L 3 4 T 0', /half of it first/],
    ['', /empty/],
    ['L 3 4', /before "M x y"/],
    ['M 3', /x and y/],
    ['M 0 0 L 1 2 3', /each point/],
    ['M 0 0 H 4', /"H" draws nothing/],
    ['4 5', /"4" draws nothing/],
    ['M 0 0 L half hihg Z', /"hihg"/],
  ])('refuses %j in words', (text, words) => {
    expect(readPath(text, lengths)).toEqual({ ok: false, message: expect.stringMatching(words) });
  });
});

describe('shapeRuns', () => {
  it('joins an open half to its mirror in one closed outline', () => {
    const whole = shapeRuns(runs('M 0 20 L half 20 half 0 0 0', true), 'whole');
    expect(whole).toHaveLength(1);
    expect(extentOf(whole)).toEqual([-100, 0, 200, 20]);
  });

  it('draws a closed outline once on each side', () => {
    expect(shapeRuns(runs('R 10 0 20 5'), 'whole').map((run) => extentOf([run])[0])).toEqual([10, -30]);
  });

  it('turns an opening against its outline, so that it stays open under either fill rule', () => {
    const [outline, opening] = shapeRuns(runs('R 0 0 100 100 R 20 20 10 10'), 'none').map((run) =>
      turns(run.curves.map(([, , end]) => end)),
    );
    expect(outline).toBe(-(opening ?? 0));
  });
});

/** +1 or −1 by the way round. */
function turns(points: readonly (readonly [number, number])[]): number {
  let area = 0;
  points.forEach(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] as readonly [number, number];
    area += x * nextY - nextX * y;
  });
  return Math.sign(area);
}
