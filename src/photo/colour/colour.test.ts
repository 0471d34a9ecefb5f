import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import reference from '../../../test/reference/colour.json' with { type: 'json' };
import { normalDraw, seededRandom } from '../../ground/seededRandom.ts';
import { mean } from '../../ground/statistics.ts';
import type { Picture } from '../picture.ts';
import { balancedLab, fitBalance } from './colourBalance.ts';
import { colourDifference, differenceSigma } from './colourDifference.ts';
import { colourSample } from './colourSample.ts';
import { encodedOf, type Lab, labOfRgb, linearOf, type Rgb, rgbOfHex } from './colourSpace.ts';

// Values and their sources: test/reference/colour.json.

const seed = 2000;
const unit = fc.double({ min: 0, max: 1, noNaN: true });
const rgb = fc.tuple(unit, unit, unit);
const lab = (values: number[]): Lab => ({
  L: values[0] as number,
  a: values[1] as number,
  b: values[2] as number,
});

describe('colors of the screen', () => {
  test.each(reference.screenColours)('$srgb8', ({ srgb8, lab_d65, lab_d50 }) => {
    const shares = srgb8.map((value) => value / 255) as unknown as Rgb;
    for (const [white, wanted] of [
      ['D65', lab_d65],
      ['D50', lab_d50],
    ] as const) {
      const found = labOfRgb(shares, white);
      [found.L, found.a, found.b].forEach((value, index) => {
        expect(Math.abs(value - (wanted[index] as number))).toBeLessThan(1e-4);
      });
    }
  });

  test('the curve to linear light, and back', () => {
    reference.curve.encoded.forEach((encoded, index) => {
      const linear = reference.curve.linear[index] as number;
      expect(Math.abs(linearOf(encoded) - linear)).toBeLessThan(reference.curve.tolerance);
      expect(encodedOf(linear)).toBeCloseTo(encoded, 6);
    });
    const { encoded, L, tolerance } = reference.midGrey;
    expect(Math.abs(labOfRgb([encoded, encoded, encoded]).L - L)).toBeLessThan(tolerance);
  });
});

describe('difference of colors', () => {
  test('is the same both ways, nothing for one color', () => {
    fc.assert(
      fc.property(rgb, rgb, (one, two) => {
        const [a, b] = [labOfRgb(one), labOfRgb(two)];
        expect(colourDifference(a, b)).toBeCloseTo(colourDifference(b, a), 9);
        expect(colourDifference(a, a)).toBe(0);
      }),
      { seed },
    );
  });

  test('its uncertainty is what drawn colors spread by', () => {
    const [a, b] = [lab([60, 12, 30]), lab([52, 14, 27])];
    const sigmas = [lab([0.4, 0.3, 0.5]), lab([0.6, 0.2, 0.4])] as const;
    const draw = normals(17);
    const moved = (of: Lab, by: Lab) =>
      lab([of.L + by.L * draw(), of.a + by.a * draw(), of.b + by.b * draw()]);
    const drawn = Array.from({ length: 20_000 }, () =>
      colourDifference(moved(a, sigmas[0]), moved(b, sigmas[1])),
    );
    const average = mean(drawn);
    const sd = Math.sqrt(drawn.reduce((sum, each) => sum + (each - average) ** 2, 0) / drawn.length);
    expect(Math.abs(differenceSigma(a, b, ...sigmas) / sd - 1)).toBeLessThan(0.03);
  });
});

describe('balance by patches', () => {
  const greys = ['#222222', '#555555', '#888888', '#bbbbbb', '#eeeeee'].map(rgbOfHex);
  const taken = (colour: Rgb, gain: Rgb, stray: number): Rgb => {
    const value = (channel: 0 | 1 | 2) => encodedOf(linearOf(colour[channel]) * gain[channel] + stray);
    return [value(0), value(1), value(2)];
  };

  test('brings back a color whatever light of one color, and whatever stray light, it was taken in', () => {
    const gain = fc.double({ min: 0.3, max: 1, noNaN: true });
    const cast = fc.record({
      gain: fc.tuple(gain, gain, gain),
      stray: fc.double({ min: 0, max: 0.03, noNaN: true }),
      wood: rgb,
    });
    fc.assert(
      fc.property(cast, ({ gain: gains, stray, wood }) => {
        const patches = greys.map((nominal) => ({ nominal, measured: taken(nominal, gains, stray) }));
        const { balance, residuals, sigma } = fitBalance(patches);
        expect(Math.max(...residuals)).toBeLessThan(1e-6);
        expect(sigma?.L).toBeLessThan(1e-6);
        const measured = taken(wood, gains, stray);
        expect(colourDifference(balancedLab(measured, balance), labOfRgb(wood))).toBeLessThan(1e-5);
      }),
      { seed },
    );
  });

  test('one patch sets the gain, and says that its uncertainty is not to be had', () => {
    const nominal = greys[2] as Rgb;
    const { balance, sigma, residuals } = fitBalance([
      { nominal, measured: taken(nominal, [0.8, 0.7, 0.5], 0) },
    ]);
    expect(balance.gain[2]).toBeCloseTo(2, 9);
    expect(balance.offset).toEqual([0, 0, 0]);
    expect(residuals[0]).toBeLessThan(1e-6);
    expect(sigma).toBeNull();
    expect(() => fitBalance([])).toThrow(RangeError);
  });

  test('what its noise leaves over is of the size of the noise', () => {
    const draw = normals(3);
    const spreads = Array.from({ length: 200 }, () => {
      const patches = greys.map((nominal) => {
        const exact = taken(nominal, [0.9, 0.8, 0.6], 0.004);
        return { nominal, measured: exact.map((value) => value + 0.004 * draw()) as unknown as Rgb };
      });
      return fitBalance(patches).sigma?.L as number;
    });
    const mean = Math.sqrt(spreads.reduce((sum, each) => sum + each ** 2, 0) / spreads.length);
    // 0.004 encoded is about 0.4 of L, each channel by its share of Y: √(0.21² + 0.72² + 0.07²) = 0.75, through gains below 1.
    expect(mean).toBeGreaterThan(0.2);
    expect(mean).toBeLessThan(0.6);
  });
});

test('a sample tells mean, spread and what is burnt out', () => {
  const picture: Picture = { widthPx: 60, heightPx: 60, channels: 1, pixels: new Uint8Array(3600) };
  for (let at = 0; at < 3600; at++) picture.pixels[at] = at % 60 < 30 ? 100 : 140;
  const whole = { x: 0, y: 0, widthPx: 60, heightPx: 60 };
  const found = colourSample(picture, whole, labOfRgb);
  expect(found.mean[0]).toBeCloseTo(120 / 255, 9);
  expect(found.clippedShare).toBe(0);
  const halves = [100, 140].map((value) => labOfRgb([value / 255, value / 255, value / 255]).L) as [
    number,
    number,
  ];
  expect(found.lab.L).toBeCloseTo((halves[0] + halves[1]) / 2, 9);
  expect(found.sd.L).toBeCloseTo(((halves[1] - halves[0]) / 2) * Math.sqrt(36 / 35), 9);
  picture.pixels.fill(255, 0, 1800);
  expect(colourSample(picture, whole, labOfRgb).clippedShare).toBeCloseTo(0.5, 9);
  expect(() => colourSample(picture, { ...whole, x: 1 }, labOfRgb)).toThrow(RangeError);
});

/** Normal numbers from a seed. */
function normals(seed: number): () => number {
  const random = seededRandom(seed);
  return () => normalDraw(random);
}
