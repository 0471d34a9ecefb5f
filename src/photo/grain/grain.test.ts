import { describe, expect, test } from 'vitest';
import gratings from '../../../test/reference/gratings.json' with { type: 'json' };
import { seededRandom } from '../../ground/seededRandom.ts';
import type { Picture } from '../picture.ts';
import { grainDirection } from './grain.ts';
import { lightnessPlane } from './grainPlane.ts';

/** A grey picture of what the function gives, 0–1, in code values. */
function drawn(widthPx: number, heightPx: number, shade: (x: number, y: number) => number): Picture {
  const pixels = Uint8Array.from({ length: widthPx * heightPx }, (_, at) =>
    Math.round(255 * Math.min(1, Math.max(0, shade(at % widthPx, Math.floor(at / widthPx))))),
  );
  return { widthPx, heightPx, channels: 1, pixels };
}

function whole({ widthPx, heightPx }: Picture) {
  return { x: 0, y: 0, widthPx, heightPx };
}

/** Noise with a seed, from −½ to ½. */
function noise(seed: number) {
  const random = seededRandom(seed);
  return () => random() - 0.5;
}

function grating(
  size: number,
  components: readonly { periodPx: number; angleDeg: number; weight: number }[],
) {
  return drawn(size, size, (x, y) =>
    components.reduce((sum, { periodPx, angleDeg, weight }) => {
      const angle = (angleDeg * Math.PI) / 180;
      return (
        sum + weight * 0.25 * Math.cos((2 * Math.PI * (x * Math.cos(angle) + y * Math.sin(angle))) / periodPx)
      );
    }, 0.5),
  );
}

function apartDeg(a: number, b: number): number {
  return Math.abs(((a - b + 90 + 720) % 180) - 90);
}

describe('the direction of grain', () => {
  test.each(gratings.gratings)('$title', ({ size, components, lineDeg, coherence, tolerance }) => {
    const picture = grating(size, components);
    const found = grainDirection(picture, whole(picture));
    expect(apartDeg(found.orientationDeg, lineDeg)).toBeLessThan(tolerance.deg);
    expect(Math.abs(found.coherence - coherence)).toBeLessThan(tolerance.coherence);
    expect(found.orientationDeg).toBeGreaterThanOrEqual(-90);
    expect(found.orientationDeg).toBeLessThanOrEqual(90);
  });

  test('turns with the picture: a quarter turn adds ninety degrees', () => {
    const picture = grating(120, [{ periodPx: 9, angleDeg: 33, weight: 1 }]);
    const turned = drawn(120, 120, (x, y) => (picture.pixels[(119 - x) * 120 + y] as number) / 255);
    const before = grainDirection(picture, whole(picture));
    const after = grainDirection(turned, whole(turned));
    expect(apartDeg(after.orientationDeg, before.orientationDeg + 90)).toBeLessThan(0.01);
    expect(after.coherence).toBeCloseTo(before.coherence, 6);
  });

  test('says it cannot tell on a painted surface under slanting light, with and without noise', () => {
    const lit = (x: number, y: number) => 0.45 + 0.0009 * x + 0.0004 * y;
    const random = noise(7);
    for (const shade of [lit, (x: number, y: number) => lit(x, y) + 0.03 * random()]) {
      const picture = drawn(300, 200, shade);
      const found = grainDirection(picture, whole(picture));
      expect(found.says).toBe('cannot-tell');
      expect(found.map.cells.filter((cell) => cell.orientationDeg !== null).length).toBeLessThan(3);
    }
  });

  test('its uncertainty holds: nine in ten noisy gratings lie within two of it', () => {
    const within = Array.from({ length: 120 }, (_, index) => {
      const random = noise(100 + index);
      const clean = grating(96, [{ periodPx: 7, angleDeg: 10 + 3 * index, weight: 0.2 }]);
      const picture = drawn(96, 96, (x, y) => (clean.pixels[y * 96 + x] as number) / 255 + 0.3 * random());
      const { orientationDeg, sigmaDeg } = grainDirection(picture, whole(picture));
      return apartDeg(orientationDeg, 100 + 3 * index) <= 2 * sigmaDeg;
    });
    expect(within.filter(Boolean).length).toBeGreaterThanOrEqual(108);
  });

  test('a large region is averaged down, the factor told, the direction kept', () => {
    const picture = drawn(
      2400,
      2400,
      (x, y) => 0.5 + 0.25 * Math.cos((2 * Math.PI * (x * 0.6 + y * 0.8)) / 24),
    );
    const found = grainDirection(picture, whole(picture));
    expect(found.factor).toBe(2);
    expect(apartDeg(found.orientationDeg, (Math.atan2(0.8, 0.6) * 180) / Math.PI - 90)).toBeLessThan(0.1);
  });
});

describe('lightness', () => {
  // sRGB greys and colours to L*, D65: mid grey #777777 is 50.03, pure red 53.24, green 87.73, blue 32.30 (widely printed; from memory).
  test.each([
    [[0x77, 0x77, 0x77], 50.03],
    [[255, 0, 0], 53.24],
    [[0, 255, 0], 87.73],
    [[0, 0, 255], 32.3],
    [[255, 255, 255], 100],
    [[0, 0, 0], 0],
  ])('%j is %d', (colour, expected) => {
    const picture: Picture = { widthPx: 1, heightPx: 1, channels: 3, pixels: Uint8Array.from(colour) };
    expect(lightnessPlane(picture, whole(picture)).values[0]).toBeCloseTo(expected, 1);
  });

  test('averages light, not code values: half black, half white is 76, not 53', () => {
    const picture = drawn(4, 4, (x, y) => (x + y) % 2);
    const shrunk = lightnessPlane(picture, whole(picture), 4);
    expect([shrunk.factor, shrunk.widthPx, shrunk.heightPx]).toEqual([2, 2, 2]);
    expect(shrunk.values[0]).toBeCloseTo(76.07, 1);
  });
});
