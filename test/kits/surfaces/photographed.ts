import { sum } from '../../../src/ground/statistics.ts';
import type { Picture } from '../../../src/photo/picture.ts';
import { randomFrom } from './random.ts';

/** How a surface was photographed. Picture coordinates: x right, y down. */
export type Camera = {
  seed: number;
  pxPerMm: number;
  /** How far the part is turned in the picture, clockwise, and how far off the examiner is in telling so. */
  turnDeg: number;
  aimDeg: number;
  /** By how large a share the scale changes over the part's width, down the picture. */
  perspective: number;
  /** Light at the edges against that in the middle, as shares: across, down, and the droop at the edges. */
  lightAcross: number;
  lightDown: number;
  lightDroop: number;
  /** Light that a finish throws back from a lamp, as a share of white. */
  gloss: number;
  blurPx: number;
  /** Noise of the sensor as a share of white, in full light. */
  noise: number;
};

/** Shades of wood: how much of each channel's light it gives back against the whole. */
const tint = [1.25, 0.95, 0.62] as const;

/**
 * A photograph of a flat surface.
 *
 * Method: each pixel looks through a turned, slightly receding plane at the surface; lighting, gloss, a Gaussian blur and noise that grows
 * with the root of the light are added in linear light, then sRGB in 8 bits. Ours.
 *
 * @param light  light given back at a place, 0–1, millimetres from the part's upper left corner
 */
export function photographed(
  light: (xMm: number, zMm: number) => number,
  size: { widthMm: number; lengthMm: number },
  camera: Camera,
): Picture {
  const widthPx = Math.round(size.widthMm * camera.pxPerMm);
  const heightPx = Math.round(size.lengthMm * camera.pxPerMm);
  const seen = new Float32Array(widthPx * heightPx);
  const turn = (camera.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      const fromMiddleX = x + 0.5 - widthPx / 2;
      const fromMiddleY = y + 0.5 - heightPx / 2;
      const recede = 1 + (camera.perspective * fromMiddleY) / widthPx;
      const across = (cos * fromMiddleX + sin * fromMiddleY) / recede;
      const along = (-sin * fromMiddleX + cos * fromMiddleY) / recede;
      const value = light(
        size.widthMm / 2 + across / camera.pxPerMm,
        size.lengthMm / 2 + along / camera.pxPerMm,
      );
      seen[y * widthPx + x] =
        value * lamp(camera, (2 * x) / widthPx - 1, (2 * y) / heightPx - 1) +
        shine(camera, (2 * x) / widthPx - 1);
    }
  }
  blur(seen, widthPx, heightPx, camera.blurPx);
  return developed(seen, widthPx, heightPx, camera);
}

function lamp({ lightAcross, lightDown, lightDroop }: Camera, x: number, y: number): number {
  return Math.max(0.05, 1 + lightAcross * x + lightDown * y - lightDroop * (x * x + y * y));
}

function shine({ gloss }: Camera, x: number): number {
  return gloss * Math.exp(-(((x - 0.3) / 0.25) ** 2));
}

function developed(seen: Float32Array, widthPx: number, heightPx: number, { seed, noise }: Camera): Picture {
  const random = randomFrom(seed);
  const pixels = new Uint8Array(seen.length * 3);
  for (let at = 0; at < seen.length; at++) {
    for (let channel = 0; channel < 3; channel++) {
      const clean = (seen[at] as number) * (tint[channel] as number);
      const grainy = clean + noise * Math.sqrt(Math.max(0.02, clean)) * random.normal();
      pixels[at * 3 + channel] = codes[Math.round(finest * Math.min(1, Math.max(0, grainy)))] as number;
    }
  }
  return { widthPx, heightPx, channels: 3, pixels };
}

/** The code value of each of many steps of linear light: finer than a code even in the dark. */
const finest = 8191;
const codes = Uint8Array.from({ length: finest + 1 }, (_, at) => Math.round(255 * encoded(at / finest)));

function encoded(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
}

/** In place, rows then columns; the edge repeats. */
function blur(values: Float32Array, widthPx: number, heightPx: number, sigma: number): void {
  if (sigma <= 0) return;
  const reach = Math.ceil(3 * sigma);
  const taps = Array.from({ length: 2 * reach + 1 }, (_, index) =>
    Math.exp(-((index - reach) ** 2) / (2 * sigma * sigma)),
  );
  const all = sum(taps);
  const passes = [
    { lines: heightPx, length: widthPx, step: 1, next: widthPx },
    { lines: widthPx, length: heightPx, step: widthPx, next: 1 },
  ];
  for (const { lines, length, step, next } of passes) {
    const line = new Float32Array(length);
    for (let index = 0; index < lines; index++) {
      for (let at = 0; at < length; at++) line[at] = values[index * next + at * step] as number;
      for (let at = 0; at < length; at++) {
        let total = 0;
        for (let tap = -reach; tap <= reach; tap++) {
          total +=
            (taps[tap + reach] as number) * (line[Math.min(length - 1, Math.max(0, at + tap))] as number);
        }
        values[index * next + at * step] = total / all;
      }
    }
  }
}
