import { describe, expect, test } from 'vitest';
import type { CalculationContext } from './define.ts';
import { photoTwins } from './photoTwins.ts';
import { runById } from './runById.ts';
import { outputOf } from './testing/outputOf.ts';

const context = { yearNow: 2026 } as CalculationContext;

const twins = (input: object) => outputOf(photoTwins, input);

const { a } = photoTwins.example as { a: [number, number][] };
const over = a.map(([x, y]) => [300 - x, y + 20]);

describe('two legs', () => {
  test('a leg and its mirror image fit turned over, and are as alike as tracing leaves', () => {
    const found = twins({ a, b: over, closed: false });
    expect(found.better).toBe('mirrored');
    expect(found.mirrored.rmsMm).toBeLessThan(1e-3);
    expect(found.plain.rmsMm).toBeGreaterThan(3);
    expect(found.rmsMm).toBe(found.mirrored.rmsMm);
    expect(found.notes.join(' ')).toContain('no more than tracing leaves');
  });

  test('pixels of two photos at two scales come to the same millimeters', () => {
    const half = {
      a: a.map(([x, y]) => [x * 4, y * 4]),
      b: over.map((point) => point.map((each) => each / 0.5)),
    };
    const found = twins({ ...half, mmPerPx: 0.25, mmPerPxB: 0.5, closed: false });
    expect(found.mirrored.rmsMm).toBeLessThan(1e-3);
    expect(found.plain.rmsMm).toBeCloseTo(twins({ a, b: over, closed: false }).plain.rmsMm, 2);
  });

  test('with the size left free only the shapes are compared', () => {
    const b = a.map(([x, y]) => [x * 1.2, y * 1.2]);
    const found = twins({ a, b, closed: false, freeSize: true });
    expect(found.plain.rmsMm).toBeLessThan(1e-3);
    expect(found.plain.size).toBeCloseTo(1 / 1.2, 4);
    expect(found.notes.join(' ')).toContain('nothing is weighed');
  });

  test('a symmetrical splat fits both ways alike', () => {
    const ring = Array.from({ length: 40 }, (_, index) => {
      const t = (index * Math.PI) / 20;
      return [60 * Math.cos(t) + 8 * Math.cos(2 * t), 110 * Math.sin(t)];
    });
    expect(twins({ a: ring, b: ring }).better).toBe('alike');
  });
});

describe('bad input gives one plain sentence that says what to do', () => {
  test.each<[string, object, string, string]>([
    [
      'two points',
      {
        a: [
          [0, 0],
          [1, 1],
        ],
        b: a,
      },
      'a',
      'at least 3 entries',
    ],
    [
      'one place',
      {
        a,
        b: [
          [4, 4],
          [4, 4],
          [4, 4],
        ],
      },
      'b',
      'trace it from end to end',
    ],
    ['no scale', { a, b: a, mmPerPx: 0 }, 'mmPerPx', 'above 0'],
  ])('%s', (_, input, path, words) => {
    // biome-ignore format: a table
    const result = runById('photo.twins', input, context);
    if (result.ok) throw new Error('no fault');
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]?.path).toBe(path);
    expect(result.faults[0]?.message).toContain(words);
  });
});
