import { describe, expect, it } from 'vitest';
import { type Area, labelPoint } from './labelPoint.ts';

const square = (left: number, top: number, size: number): Area => ({
  polygons: [
    [
      [left, top],
      [left + size, top],
      [left + size, top + size],
      [left, top + size],
    ],
  ],
  box: [left, top, size, size],
});

describe('labelPoint', () => {
  it('stands near the middle of a plain shape', () => {
    const [x, y] = labelPoint(square(0, 0, 100), []);
    expect(Math.hypot(x - 50, y - 50)).toBeLessThan(10);
  });

  it('keeps out of an opening', () => {
    const frame: Area = {
      polygons: [...square(0, 0, 100).polygons, ...square(20, 20, 60).polygons],
      box: [0, 0, 100, 100],
    };
    const [x, y] = labelPoint(frame, []);
    expect(x < 20 || x > 80 || y < 20 || y > 80).toBe(true);
  });

  it('keeps clear of a shape in front, and stands under it only where nothing is left open', () => {
    const [x, y] = labelPoint(square(0, 0, 100), [square(30, 30, 100)]);
    expect(x < 30 || y < 30).toBe(true);
    const [underX, underY] = labelPoint(square(0, 0, 100), [square(-10, -10, 200)]);
    expect(Math.hypot(underX - 50, underY - 50)).toBeLessThan(10);
  });
});
