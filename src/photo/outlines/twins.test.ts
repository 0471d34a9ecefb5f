import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalDraw, seededRandom } from '../../ground/seededRandom.ts';
import { mean } from '../../ground/statistics.ts';
import type { Picture, Point } from '../picture.ts';
import { edgePath } from './twinsEdge.ts';
import { twinsFit } from './twinsFit.ts';
import { moved, movedBack, nearestMotion } from './twinsMotion.ts';
import { apart, evenOutline, isClosed, nearestFinder } from './twinsOutline.ts';

const seed = 1992;
const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const shift = fc.double({ min: -400, max: 400, noNaN: true });
const motion = fc.record({ turnRad: angle, shift: fc.tuple(shift, shift), scale: fc.constant(1) });

/** A cabriole leg’s profile, open, in mm. */
function leg(count: number): Point[] {
  return Array.from({ length: count }, (_, index): Point => {
    const t = index / (count - 1);
    return [40 + 28 * Math.sin(2 * Math.PI * t) * Math.exp(-1.2 * t) + 14 * t ** 6, 400 * t];
  });
}

/** A splat’s outline, closed and not symmetrical, in mm. */
function splat(count: number): Point[] {
  return Array.from({ length: count }, (_, index): Point => {
    const t = (2 * Math.PI * index) / count;
    const r = 90 + 22 * Math.cos(3 * t) + 11 * Math.sin(2 * t + 0.7) + 7 * Math.cos(5 * t + 1.1);
    return [r * Math.cos(t), 1.7 * r * Math.sin(t)];
  });
}

describe('the fit', () => {
  test('finds known motions again, however the points lie, and tells turned over from straight', () => {
    fc.assert(
      fc.property(motion, fc.boolean(), fc.boolean(), fc.boolean(), (by, closed, over, backwards) => {
        const shape = closed ? splat : leg;
        const first = shape(400);
        const second = shape(317).map((point) => movedBack(point, by));
        const turned = over ? second.map(([x, y]): Point => [-x, y]) : second;
        const start = closed ? 101 : 0;
        const cut = [...turned.slice(start), ...turned.slice(0, start)];
        const traced = backwards ? cut.reverse() : cut;
        const fits = [false, true].map((mirrored) =>
          twinsFit({ points: first, closed }, { points: traced, closed }, mirrored, false),
        ) as [ReturnType<typeof twinsFit>, ReturnType<typeof twinsFit>];
        const [right, wrong] = over ? [fits[1], fits[0]] : fits;
        expect(right.rms).toBeLessThan(0.05);
        expect(wrong.rms).toBeGreaterThan(2);
        expect(right.motion.shift[0]).toBeCloseTo(by.shift[0], 0);
        expect(Math.cos(right.motion.turnRad - by.turnRad)).toBeGreaterThan(0.99999);
      }),
      { seed, numRuns: 25 },
    );
  });

  test('finds the size again where it is left free', () => {
    const small = splat(300).map((point) => movedBack(point, { turnRad: 1, shift: [5, 6], scale: 2.5 }));
    const fit = twinsFit({ points: splat(300), closed: true }, { points: small, closed: true }, false, true);
    expect(fit.motion.scale).toBeCloseTo(2.5, 3);
    expect(fit.rms).toBeLessThan(0.05);
  });

  test('noise of s on both outlines leaves about √2 s, a little less for what the fit and the nearest place take away', () => {
    const draw = normals(5);
    const noisy = (points: Point[], s: number) =>
      points.map(([x, y]): Point => [x + s * draw(), y + s * draw()]);
    for (const s of [0.2, 0.5]) {
      const fit = twinsFit(
        { points: noisy(leg(80), s), closed: false },
        { points: noisy(leg(80), s), closed: false },
        false,
        false,
      );
      expect(fit.rms / (Math.SQRT2 * s)).toBeGreaterThan(0.6);
      expect(fit.rms / (Math.SQRT2 * s)).toBeLessThan(1.1);
    }
  });

  test('a known bulge is found, with its height and place', () => {
    const bulged = leg(400).map(([x, y]): Point => [x + 3 * Math.exp(-(((y - 200) / 15) ** 2)), y]);
    const fit = twinsFit(
      { points: bulged, closed: false },
      { points: leg(400), closed: false },
      false,
      false,
    );
    expect(fit.max).toBeGreaterThan(2.2);
    expect(fit.max).toBeLessThan(3);
    expect(Math.abs(fit.worst[1] - 200)).toBeLessThan(12);
  });
});

describe('its parts', () => {
  test('a motion there and back is none, and partners give it again', () => {
    fc.assert(
      fc.property(motion, fc.tuple(shift, shift), (by, point) => {
        expect(apart(movedBack(moved(point, by), by), point)).toBeLessThan(1e-9);
        const points = leg(20);
        const found = nearestMotion(
          points,
          points.map((each) => moved(each, by)),
          false,
        );
        expect(apart(moved(point, found), moved(point, by))).toBeLessThan(1e-8);
      }),
      { seed },
    );
  });

  test('even points have one step, and an outline is told closed by its ends', () => {
    const even = evenOutline(
      [
        [0, 0],
        [10, 0],
        [10, 5],
      ],
      7,
      false,
    );
    expect(even[4]?.[0]).toBeCloseTo(10, 9);
    for (const [index, point] of even.slice(1).entries())
      expect(apart(point, even[index] as Point)).toBeCloseTo(2.5, 9);
    expect(isClosed(splat(50))).toBe(true);
    expect(isClosed(leg(50))).toBe(false);
    expect(
      nearestFinder(
        [
          [0, 0],
          [10, 0],
        ],
        false,
      )([3, 4]),
    ).toEqual([3, 0]);
    expect(() =>
      evenOutline(
        [
          [1, 1],
          [1, 1],
        ],
        5,
        false,
      ),
    ).toThrow(RangeError);
  });
});

describe('the edge between two clicks', () => {
  const disc = (noise: number): Picture => {
    const pixels = new Uint8Array(200 * 200);
    const draw = normals(9);
    for (let y = 0; y < 200; y++)
      for (let x = 0; x < 200; x++) {
        const inside = Math.min(1, Math.max(0, 70.5 - Math.hypot(x - 99.3, y - 98.6)));
        pixels[y * 200 + x] = Math.min(255, Math.max(0, 80 + 100 * inside + noise * draw()));
      }
    return { widthPx: 200, heightPx: 200, channels: 1, pixels };
  };

  test('follows a rim, though the clicks are beside it and the picture is noisy', () => {
    const region = { x: 10, y: 10, widthPx: 180, heightPx: 180 };
    for (const noise of [0, 4]) {
      const path = edgePath(disc(noise), region, [172, 99], [98, 26]);
      const off = path.map(([x, y]) => Math.abs(Math.hypot(x - 99.3, y - 98.6) - 70));
      expect(Math.max(...off)).toBeLessThan(1);
      expect(mean(off)).toBeLessThan(noise === 0 ? 0.2 : 0.4);
      // A quarter of the rim, not the chord: its length shows it.
      const long = path.slice(1).reduce((sum, point, index) => sum + apart(point, path[index] as Point), 0);
      expect(long).toBeGreaterThan(0.9 * 70 * (Math.PI / 2));
    }
  });

  test('a click outside is a slip', () => {
    const region = { x: 50, y: 50, widthPx: 60, heightPx: 60 };
    expect(() => edgePath(disc(0), region, [10, 10], [60, 60])).toThrow(RangeError);
  });
});

/** Normal numbers from a seed. */
function normals(seed: number): () => number {
  const random = seededRandom(seed);
  return () => normalDraw(random);
}
