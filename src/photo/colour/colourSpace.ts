/** A colour of CIELAB: lightness 0 (black) to 100 (white), a towards red, b towards yellow. */
export type Lab = { L: number; a: number; b: number };

/** Red, green and blue, each 0–1: encoded as in a file, or as linear light where a name says so. */
export type Rgb = readonly [number, number, number];

/** Under which white CIELAB is told: daylight of 6500 K (screens) or of 5000 K (print). */
export type White = 'D65' | 'D50';

/**
 * The colour that a screen value of sRGB stands for, in CIELAB.
 *
 * Method: the curve of IEC 61966-2-1 to linear light, its matrix to XYZ under D65; for D50 adapted by Bradford; then CIELAB.
 *
 * @param rgb    encoded values, 0–1; values outside are taken as they are, as a balanced photograph may have them
 * @param white  D65 unless said
 * @accuracy within 0.0001 of three colour programs on fifteen colours (test/reference/colour.json)
 * @source IEC 61966-2-1; CIE 15; Bradford: Lam 1985, from memory
 */
export function labOfRgb(rgb: Rgb, white: White = 'D65'): Lab {
  return labOfLinear([linearOf(rgb[0]), linearOf(rgb[1]), linearOf(rgb[2])], white);
}

/** CIELAB of linear light of sRGB’s primaries. */
export function labOfLinear(linear: Rgb, white: White = 'D65'): Lab {
  const xyz = times(toXyz, linear);
  const [x, y, z] = white === 'D65' ? divided(xyz, whites.D65) : divided(times(bradford, xyz), whites.D50);
  const [fx, fy, fz] = [cubeRoot(x), cubeRoot(y), cubeRoot(z)];
  return { L: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

/** Linear light of one encoded value, 0–1, by the curve of IEC 61966-2-1. */
export function linearOf(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
}

/** The encoded value of linear light: `linearOf` the other way. */
export function encodedOf(linear: number): number {
  return linear <= 0.04045 / 12.92 ? linear * 12.92 : 1.055 * linear ** (1 / 2.4) - 0.055;
}

/** Red, green and blue of a written colour, `#9a7b4f` or `9A7B4F`, each 0–1. */
export function rgbOfHex(hex: string): Rgb {
  const digits = /^#?([0-9a-f]{6})$/i.exec(hex)?.[1];
  if (digits === undefined) throw new RangeError(`rgbOfHex needs six digits of hexadecimal, got ${hex}`);
  const channel = (at: number) => Number.parseInt(digits.slice(at, at + 2), 16) / 255;
  return [channel(0), channel(2), channel(4)];
}

type Triple = readonly [number, number, number];
type Matrix = readonly [Triple, Triple, Triple];

/** Linear sRGB to XYZ under D65, from the chromaticities of IEC 61966-2-1. */
const toXyz: Matrix = [
  [0.41239079926595934, 0.357584339383878, 0.1804807884018343],
  [0.21263900587151027, 0.715168678767756, 0.07219231536073371],
  [0.01933081871559182, 0.11919477979462598, 0.9505321522496607],
];

/** XYZ under D65 to XYZ under D50, by Bradford. */
const bradford: Matrix = [
  [1.0479297925449969, 0.022946870601609652, -0.05019226628920524],
  [0.02962780877005599, 0.9904344267538799, -0.017073799063418826],
  [-0.009243040646204504, 0.015055191490298152, 0.7518742814281371],
];

/** From the chromaticities (0.3127, 0.3290) and (0.3457, 0.3585). */
const whites = {
  D65: [0.3127 / 0.329, 1, (1 - 0.3127 - 0.329) / 0.329],
  D50: [0.3457 / 0.3585, 1, (1 - 0.3457 - 0.3585) / 0.3585],
} satisfies Record<White, Triple>;

function times(matrix: Matrix, [x, y, z]: Triple): Triple {
  const row = ([a, b, c]: Triple) => a * x + b * y + c * z;
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
}

function divided(of: Triple, by: Triple): Triple {
  return [of[0] / by[0], of[1] / by[1], of[2] / by[2]];
}

function cubeRoot(share: number): number {
  return share > 216 / 24389 ? Math.cbrt(share) : ((24389 / 27) * share + 16) / 116;
}
