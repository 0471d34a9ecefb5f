import type { Picture } from './picture.ts';
import { type Random, randomFrom } from './render/random.ts';
import { smoothNoise } from './render/smoothNoise.ts';
import { type MarkTruth, markHeights } from './renderMarksHeights.ts';
import type { MarkKind } from './toolmarksNamed.ts';

/** A surface under raking light whose marks are known. */
export type RenderedMarks = {
  picture: Picture;
  kind: MarkKind | 'none';
  truth: MarkTruth;
  mmPerPx: number;
  /** The direction of the board’s length in the picture, as an examiner gives it: off by a degree or two. */
  directionDeg: number;
};

/**
 * A board’s face with marks of one kind, photographed under raking light; the same seed gives the same picture.
 *
 * Method: heights in mm (see renderMarksHeights.ts), worn away in patches; the light falls at 6 to 14 degrees, within 50 degrees of square to the
 * marks, and shades by the slope over the tangent of its height; wood has streaks, rings, pores and broad zones of its own colour along its length; the
 * picture is turned by up to 6 degrees, blurred a little and noisy.
 *
 * @param weak  a factor on all marks: 1 as they come
 */
export function renderMarks(kind: MarkKind | 'none', seed: number, weak = 1): RenderedMarks {
  const random = randomFrom(seed);
  const mmPerPx = random.between(0.14, 0.22);
  const [lengthMm, widthMm] = [random.between(80, 115), random.between(62, 85)];
  const [columns, rows] = [Math.round(lengthMm / mmPerPx), Math.round(widthMm / mmPerPx)];
  const turnRad = (random.between(-6, 6) * Math.PI) / 180;
  const place = { columns, rows, mmPerPx, turnRad };
  const { heights, truth } = markHeights(kind, random, place);
  // From plain to nearly gone: a quarter of the depth to half as much again.
  const strength = weak * Math.exp(random.between(Math.log(0.25), Math.log(1.5)));
  const alongMarks = kind === 'hand-planed' || kind === 'sliced';
  const lightRad = turnRad + (alongMarks ? Math.PI / 2 : 0) + (random.between(-50, 50) * Math.PI) / 180;
  const tangent = Math.tan((random.between(6, 14) * Math.PI) / 180);
  const shine = [Math.cos(lightRad) / tangent, Math.sin(lightRad) / tangent] as const;
  const wood = woodOf(random, seed, turnRad, mmPerPx);
  const noise = random.between(0.006, 0.022);
  const fall = [random.between(-0.15, 0.15), random.between(-0.15, 0.15)] as const;
  const pixels = new Uint8Array(columns * rows);
  const at = (x: number, y: number) =>
    heights[Math.min(rows - 1, Math.max(0, y)) * columns + Math.min(columns - 1, Math.max(0, x))] as number;
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const worn = 0.75 + 0.25 * smoothNoise(seed + 3, (x * mmPerPx) / 28, (y * mmPerPx) / 28);
      const across = ((at(x + 1, y) - at(x - 1, y)) / (2 * mmPerPx)) * worn * strength;
      const down = ((at(x, y + 1) - at(x, y - 1)) / (2 * mmPerPx)) * worn * strength;
      const shade = Math.max(0.05, 1 + across * shine[0] + down * shine[1]);
      const lit = 1 + fall[0] * (x / columns - 0.5) + fall[1] * (y / rows - 0.5);
      const light = wood(x, y) * lit * Math.min(1.9, shade) + noise * random.normal();
      pixels[y * columns + x] = Math.round(255 * Math.min(1, Math.max(0, light)));
    }
  const directionDeg = (turnRad * 180) / Math.PI + 1.2 * random.normal();
  return {
    picture: { widthPx: columns, heightPx: rows, channels: 1, pixels },
    kind,
    truth,
    mmPerPx,
    directionDeg,
  };
}

/** The wood’s own colour, as a share of light. */
function woodOf(
  random: Random,
  seed: number,
  turnRad: number,
  mmPerPx: number,
): (x: number, y: number) => number {
  const [base, rings, streaks, pores] = [
    random.between(0.36, 0.6),
    random.between(0, 0.12),
    random.between(0.01, 0.06),
    random.between(0, 0.12),
  ];
  const zones = random.between(0, 0.06);
  const ringMm = random.between(2, 9);
  const [cos, sin] = [Math.cos(turnRad) * mmPerPx, Math.sin(turnRad) * mmPerPx];
  return (x, y) => {
    const along = cos * x + sin * y;
    const across = cos * y - sin * x;
    const ring = Math.sin((2 * Math.PI * (across + 3 * smoothNoise(seed + 5, along / 90, 0.5))) / ringMm);
    const streak = smoothNoise(seed + 6, across / 0.7, along / 35);
    const zone = smoothNoise(seed + 8, across / 14, along / 300);
    const pore = Math.max(0, smoothNoise(seed + 7, across / 0.3, along / 3) - 0.5);
    return base * (1 - rings * ring * 0.5 - streaks * streak - pores * pore - zones * zone);
  };
}
