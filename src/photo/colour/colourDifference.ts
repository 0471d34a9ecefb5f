import type { Lab } from './colourSpace.ts';

/**
 * How far apart two colours look, by the formula of the CIE of the year 2000.
 *
 * Method: CIEDE2000 with all weights 1. About 1 is the least that is seen side by side, about 2 to 3 is plain.
 *
 * @returns 0 for equal colours
 * @accuracy within 0.0001 of all 34 published pairs, and 1e-8 of three programs on 20 further pairs (test/reference/colour.json)
 * @source Sharma, Wu and Dalal 2005 (notes on carrying out CIEDE2000, with their test pairs)
 */
export function colourDifference(one: Lab, two: Lab): number {
  const meanChroma = (Math.hypot(one.a, one.b) + Math.hypot(two.a, two.b)) / 2;
  const stretch = 1 + 0.5 * (1 - seventh(meanChroma));
  const [first, second] = [hueAndChroma(one, stretch), hueAndChroma(two, stretch)];
  const lightness = two.L - one.L;
  const chroma = second.chroma - first.chroma;
  const turn = hueTurn(first, second);
  const hue = 2 * Math.sqrt(first.chroma * second.chroma) * Math.sin(turn / 2);
  const L = (one.L + two.L) / 2;
  const C = (first.chroma + second.chroma) / 2;
  const h = meanHue(first, second);
  const T =
    1 -
    0.17 * Math.cos(h - radians(30)) +
    0.24 * Math.cos(2 * h) +
    0.32 * Math.cos(3 * h + radians(6)) -
    0.2 * Math.cos(4 * h - radians(63));
  const away = (L - 50) ** 2;
  const byLightness = lightness / (1 + (0.015 * away) / Math.sqrt(20 + away));
  const byChroma = chroma / (1 + 0.045 * C);
  const byHue = hue / (1 + 0.015 * C * T);
  const degrees = (h * 180) / Math.PI;
  const bend = radians(30 * Math.exp(-(((degrees - 275) / 25) ** 2)));
  const rotation = -2 * seventh(C) * Math.sin(2 * bend);
  return Math.sqrt(Math.max(0, byLightness ** 2 + byChroma ** 2 + byHue ** 2 + rotation * byChroma * byHue));
}

/** The standard uncertainty of a difference, from one and the same uncertainty of L, a and b of each colour. */
export function differenceSigma(one: Lab, two: Lab, sigmaOne: Lab, sigmaTwo: Lab): number {
  const step = 1e-4;
  let variance = 0;
  for (const key of ['L', 'a', 'b'] as const) {
    for (const [colour, sigma, first] of [
      [one, sigmaOne, true],
      [two, sigmaTwo, false],
    ] as const) {
      const at = (by: number) => {
        const moved = { ...colour, [key]: colour[key] + by };
        return first ? colourDifference(moved, two) : colourDifference(one, moved);
      };
      variance += (((at(step) - at(-step)) / (2 * step)) * sigma[key]) ** 2;
    }
  }
  return Math.sqrt(variance);
}

type HueAndChroma = { chroma: number; hueRad: number };

function hueAndChroma({ a, b }: Lab, stretch: number): HueAndChroma {
  const hue = Math.atan2(b, a * stretch);
  return { chroma: Math.hypot(a * stretch, b), hueRad: hue < 0 ? hue + 2 * Math.PI : hue };
}

function hueTurn(first: HueAndChroma, second: HueAndChroma): number {
  if (first.chroma * second.chroma === 0) return 0;
  const turn = second.hueRad - first.hueRad;
  if (turn > Math.PI) return turn - 2 * Math.PI;
  return turn < -Math.PI ? turn + 2 * Math.PI : turn;
}

function meanHue(first: HueAndChroma, second: HueAndChroma): number {
  const sum = first.hueRad + second.hueRad;
  if (first.chroma * second.chroma === 0) return sum;
  if (Math.abs(first.hueRad - second.hueRad) <= Math.PI) return sum / 2;
  return sum < 2 * Math.PI ? sum / 2 + Math.PI : sum / 2 - Math.PI;
}

function seventh(chroma: number): number {
  return Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
