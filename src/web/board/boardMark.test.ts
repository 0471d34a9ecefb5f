import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../photo/picture.ts';
import { canStand, isFull, isOpen, type MarkKind, movedTogether } from './boardMark.ts';
import { keyStep } from './keyStep.ts';

const size = { widthPx: 1200, heightPx: 900 };

describe('a mark on the board', () => {
  it('takes one point where it is a point, two for a line, three and more for a polygon until it is closed', () => {
    const stands = (kind: MarkKind, count: number) => [
      canStand(kind, count),
      isFull({ kind, points: Array.from({ length: count }, (): Point => [0, 0]) }),
    ];
    expect(stands('point', 1)).toEqual([true, true]);
    expect([stands('line', 1), stands('line', 2)]).toEqual([
      [false, false],
      [true, true],
    ]);
    expect([stands('polygon', 2), stands('polygon', 3)]).toEqual([
      [false, false],
      [true, false],
    ]);
    expect([isOpen('polygon'), isOpen('line')]).toEqual([true, false]);
  });

  it('stays inside the picture and keeps its shape as it is moved (property)', () => {
    const across = fc.integer({ min: 0, max: size.widthPx - 1 });
    const down = fc.integer({ min: 0, max: size.heightPx - 1 });
    const step = fc.integer({ min: -3000, max: 3000 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(across, down), { minLength: 2, maxLength: 6 }),
        step,
        step,
        (raw, dx, dy) => {
          const points = raw as Point[];
          const after = movedTogether(points, [dx, dy], size);
          for (const [x, y] of after)
            expect(x >= 0 && x < size.widthPx && y >= 0 && y < size.heightPx).toBe(true);
          const [from, to] = [points[0], after[0]] as [Point, Point];
          for (const [index, [x, y]] of points.entries()) {
            const [nx = 0, ny = 0] = after[index] ?? [];
            expect([nx - x, ny - y]).toEqual([to[0] - from[0], to[1] - from[1]]);
          }
        },
      ),
      { seed: 7 },
    );
  });

  it('is stepped by the arrow keys only: by pixels to measure, by hundredths of the picture to point out', () => {
    const press = (key: string, held = {}) => ({ key, shiftKey: false, altKey: false, ...held });
    expect(keyStep(press('ArrowLeft'), 'pixels', size)).toEqual([-1, 0]);
    expect(keyStep(press('ArrowDown', { altKey: true }), 'pixels', size)).toEqual([0, 100]);
    expect(keyStep(press('ArrowDown'), 'hundredths', size)).toEqual([0, 9]);
    expect(keyStep(press('ArrowRight', { shiftKey: true }), 'hundredths', size)).toEqual([60, 0]);
    expect(keyStep(press('ArrowRight', { altKey: true }), 'hundredths', size)).toEqual([1, 0]);
    expect(keyStep(press('x'), 'pixels', size)).toBeUndefined();
  });
});
