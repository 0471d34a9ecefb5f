import { encodedOf, type Lab } from '../../../photo/colour/colourSpace.ts';

/** A colour of CIELAB under D65 as a screen shows it, for a swatch; what a screen can’t show is held to what it can. */
export function rgbOfLab({ L, a, b }: Lab): string {
  const y = (L + 16) / 116;
  const share = (f: number) => (f > 6 / 29 ? f ** 3 : 3 * (6 / 29) ** 2 * (f - 4 / 29));
  const [X, Y, Z] = [0.95047 * share(y + a / 500), share(y), 1.08883 * share(y - b / 200)];
  const linear = [
    3.2404542 * X - 1.5371385 * Y - 0.4985314 * Z,
    -0.969266 * X + 1.8760108 * Y + 0.041556 * Z,
    0.0556434 * X - 0.2040259 * Y + 1.0572252 * Z,
  ];
  const codes = linear.map((each) => Math.round(255 * encodedOf(Math.max(0, Math.min(1, each)))));
  return `rgb(${codes.join(' ')})`;
}
