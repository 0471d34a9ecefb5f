import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arrowStep,
  canStand,
  type Drawing,
  isComplete,
  movedTogether,
  type Place,
  setPlace,
} from './placeMark.ts';

const start = (kind: Drawing['kind']): Drawing => ({ kind, places: [], at: [0.5, 0.5] });

describe('placing a mark', () => {
  it('takes one place for a point, two for a line, three and more for an outline', () => {
    expect(isComplete(setPlace(start('point')))).toBe(true);
    const half = setPlace(start('line'));
    expect([isComplete(half), isComplete(setPlace(half, [0.7, 0.5]))]).toEqual([false, true]);
    const three = setPlace(setPlace(setPlace(start('outline')), [0.7, 0.5]), [0.7, 0.9]);
    expect([isComplete(three), canStand(three)]).toEqual([false, true]);
  });

  it('stays inside the picture, and moving keeps the shape (property)', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const step = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(share, share), { minLength: 2, maxLength: 6 }),
        step,
        step,
        (raw, dx, dy) => {
          const places = raw as Place[];
          const after = movedTogether(places, [dx, dy]);
          for (const [x, y] of after) expect(x >= 0 && x <= 1 && y >= 0 && y <= 1).toBe(true);
          for (let i = 1; i < places.length; i += 1) {
            const [a, b, c, d] = [places[0], places[i], after[0], after[i]] as [Place, Place, Place, Place];
            expect(Math.abs(b[0] - a[0] - (d[0] - c[0]))).toBeLessThan(2.1e-4);
            expect(Math.abs(b[1] - a[1] - (d[1] - c[1]))).toBeLessThan(2.1e-4);
          }
        },
      ),
      { seed: 7 },
    );
  });

  it('steps by arrow keys only', () => {
    expect(arrowStep('ArrowLeft', false)).toEqual([-0.01, 0]);
    expect(arrowStep('ArrowDown', true)).toEqual([0, 0.05]);
    expect(arrowStep('x', false)).toBeUndefined();
  });
});
