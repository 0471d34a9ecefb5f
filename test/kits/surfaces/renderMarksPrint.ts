import type { Random } from './random.ts';
import { smoothNoise } from './smoothNoise.ts';

/** Light of a drawn surface, row by row, 0 dark and 1 white. */
export type Light = { columns: number; rows: number; values: Float32Array };

/** A pixel of the picture is so many pixels of the surface, so that a slanting view stays within it. */
export const viewScale = 0.84;

/**
 * A drawn surface as a hand camera sees it: not quite square, with a soft shadow and darker corners, not quite sharp, noisy, and kept as JPEG.
 *
 * Method: a slant of up to 0.12 and a convergence of up to 4 in 100 either way; a shadow edge 12 to 60 mm soft that takes up to 0.35; corners darker by up to
 * 0.4; three box blurs of up to 1.5 pixels in all; noise; JPEG’s cosine blocks of 8, rounded by its usual table at a quality of 55 to 97.
 *
 * @param gamma  of the picture: a value is light to the power of one over it
 */
export function printLight(
  light: Light,
  random: Random,
  seed: number,
  mmPerPx: number,
  gamma: number,
): Light {
  const seen = viewed(light, random);
  const { columns, rows, values } = seen;
  const [dark, softMm] = [random.share() < 0.5 ? 0 : random.between(0, 0.35), random.between(12, 60)];
  const corner = random.between(0, 0.4);
  const [turn, offMm] = [2 * Math.PI * random.share(), random.between(-25, 25)];
  for (let at = 0; at < values.length; at++) {
    const [u, v] = [(at % columns) / columns - 0.5, Math.floor(at / columns) / rows - 0.5];
    const farMm = (Math.cos(turn) * u * columns + Math.sin(turn) * v * rows) * mmPerPx - offMm;
    const wavy = farMm + 4 * smoothNoise(seed + 9, u * 4, v * 4);
    const shaded = dark * Math.min(1, Math.max(0, 0.5 + wavy / softMm));
    values[at] = (values[at] as number) * (1 - shaded) * (1 - 2 * corner * (u * u + v * v));
  }
  const noise = random.between(0.004, 0.022);
  const blurPx = random.between(0, 1.5);
  const blurry = blurred(seen, blurPx);
  const out = blurry.map((each) => Math.max(0, each) ** (1 / gamma) + noise * random.normal());
  return { columns, rows, values: jpegLike({ columns, rows, values: out }, random.between(55, 97)) };
}

function viewed({ columns, rows, values }: Light, random: Random): Light {
  const slant = random.between(-0.12, 0.12);
  const [byX, byY] = [random.between(-0.04, 0.04), random.between(-0.04, 0.04)];
  const out = new Float32Array(columns * rows);
  const read = (x: number, y: number) =>
    values[Math.min(rows - 1, Math.max(0, y)) * columns + Math.min(columns - 1, Math.max(0, x))] as number;
  for (let at = 0; at < out.length; at++) {
    const [u, v] = [(at % columns) - columns / 2, Math.floor(at / columns) - rows / 2];
    const depth = 1 + (2 * byX * u) / columns + (2 * byY * v) / rows;
    const x = columns / 2 + (viewScale * (u + slant * v)) / depth;
    const y = rows / 2 + (viewScale * v) / depth;
    const [left, top] = [Math.floor(x), Math.floor(y)];
    const [right, down] = [x - left, y - top];
    out[at] =
      (read(left, top) * (1 - right) + read(left + 1, top) * right) * (1 - down) +
      (read(left, top + 1) * (1 - right) + read(left + 1, top + 1) * right) * down;
  }
  return { columns, rows, values: out };
}

/** Three rounds of a three-pixel mean, both ways, weighted so that the spread is `sigmaPx`. */
function blurred({ columns, rows, values }: Light, sigmaPx: number): Float32Array {
  const side = Math.min(1 / 3, sigmaPx ** 2 / 6 / 1);
  let now = values;
  for (let round = 0; round < 3; round++)
    for (const [step, ends] of [
      [1, columns],
      [columns, rows],
    ] as const) {
      const next = new Float32Array(now.length);
      for (let at = 0; at < now.length; at++) {
        const place = step === 1 ? at % columns : Math.floor(at / columns);
        const here = now[at] as number;
        const before = place > 0 ? (now[at - step] as number) : here;
        const after = place < ends - 1 ? (now[at + step] as number) : here;
        next[at] = here * (1 - 2 * side) + side * (before + after);
      }
      now = next;
    }
  return now;
}

/** Cosines of JPEG’s blocks: cosines[k * 8 + x]. */
const cosines = Float64Array.from({ length: 64 }, (_, at) => {
  const k = Math.floor(at / 8);
  return (k === 0 ? Math.SQRT1_2 : 1) * 0.5 * Math.cos(((2 * (at % 8) + 1) * k * Math.PI) / 16);
});

/** Each block of 8 by 8 as cosines, rounded as JPEG rounds lightness. */
function jpegLike({ columns, rows, values }: Light, quality: number): Float32Array {
  const out = Float32Array.from(values);
  const scale = (quality < 50 ? 5000 / quality : 200 - 2 * quality) / 100;
  const steps = lightnessTable.map((each) => Math.max(1, Math.round(each * scale)) / 255);
  const block = new Float64Array(64);
  for (let top = 0; top + 8 <= rows; top += 8)
    for (let left = 0; left + 8 <= columns; left += 8) {
      for (let at = 0; at < 64; at++)
        block[at] = out[(top + (at >> 3)) * columns + left + (at & 7)] as number;
      const waves = turned(turned(block, false), false);
      for (let at = 0; at < 64; at++)
        waves[at] = Math.round((waves[at] as number) / (steps[at] as number)) * (steps[at] as number);
      const back = turned(turned(waves, true), true);
      for (let at = 0; at < 64; at++) out[(top + (at >> 3)) * columns + left + (at & 7)] = back[at] as number;
    }
  return out;
}

/** One direction of the cosine transform, the block turned over its diagonal: twice is the whole. */
function turned(block: Float64Array, back: boolean): Float64Array {
  const out = new Float64Array(64);
  for (let row = 0; row < 8; row++)
    for (let to = 0; to < 8; to++) {
      let sum = 0;
      for (let from = 0; from < 8; from++)
        sum += (block[row * 8 + from] as number) * (cosines[back ? from * 8 + to : to * 8 + from] as number);
      out[to * 8 + row] = sum;
    }
  return out;
}

// The table of lightness in annex K of the JPEG standard (ITU-T T.81), from memory.
// biome-ignore format: eight rows of eight
const lightnessTable = [
  16, 11, 10, 16, 24, 40, 51, 61,
  12, 12, 14, 19, 26, 58, 60, 55,
  14, 13, 16, 24, 40, 57, 69, 56,
  14, 17, 22, 29, 51, 87, 80, 62,
  18, 22, 37, 56, 68, 109, 103, 77,
  24, 35, 55, 64, 81, 104, 113, 92,
  49, 64, 78, 87, 103, 121, 120, 101,
  72, 92, 95, 98, 112, 100, 103, 99,
];
