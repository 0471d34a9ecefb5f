import { describe, expect, test } from 'vitest';
import { type Homography, mapped } from './homography.ts';
import type { Picture } from './picture.ts';
import { rectifyPicture } from './rectifyPicture.ts';

const toPicture: Homography = [
  [2, 0.3, 20],
  [-0.1, 2.2, 30],
  [0.001, 0.0005, 1],
];
const area = { leftMm: 5, topMm: 10, widthMm: 60, heightMm: 40 };

/** A picture whose tone rises evenly, so that any place in it has a known tone. */
function ramp(channels: 1 | 3): Picture {
  const [widthPx, heightPx] = [200, 150];
  const pixels = new Uint8Array(widthPx * heightPx * channels);
  for (let i = 0; i < pixels.length; i++) {
    const at = Math.floor(i / channels);
    pixels[i] = (at % widthPx) + (i % channels) * 10;
  }
  return { widthPx, heightPx, channels, pixels };
}

describe('a picture seen squarely', () => {
  test.each([1, 3] as const)('with %d channels each pixel has the tone of its place', (channels) => {
    const drawn = rectifyPicture(ramp(channels), toPicture, area, 2);
    expect([drawn.widthPx, drawn.heightPx, drawn.channels]).toEqual([120, 80, channels]);
    for (const [column, row] of [
      [0, 0],
      [119, 79],
      [60, 40],
      [7, 71],
    ] as const) {
      const { point } = mapped(toPicture, [5 + (column + 0.5) / 2, 10 + (row + 0.5) / 2]);
      for (let k = 0; k < channels; k++) {
        const found = drawn.pixels[(row * 120 + column) * channels + k] as number;
        expect(Math.abs(found - (point[0] + 10 * k))).toBeLessThanOrEqual(0.5 + 1e-9);
      }
    }
  });

  test('what lies outside is black', () => {
    const drawn = rectifyPicture(ramp(1), toPicture, { ...area, leftMm: 2000 }, 1);
    expect(Math.max(...drawn.pixels)).toBe(0);
  });

  test('a size that can’t be drawn is refused', () => {
    expect(() => rectifyPicture(ramp(1), toPicture, area, 1e6)).toThrow(/draws 1 to 100000000 pixels/);
    expect(() => rectifyPicture(ramp(1), toPicture, { ...area, widthMm: 0 }, 1)).toThrow(RangeError);
  });
});
