import type { Picture } from '../../../src/photo/picture.ts';
import type { MarkKind } from '../../../src/photo/toolmarks/toolmarksNamed.ts';
import { type Random, randomFrom } from './random.ts';
import { type MarkTruth, markHeights } from './renderMarksHeights.ts';
import { printLight, viewScale } from './renderMarksPrint.ts';
import { woodOf } from './renderMarksWood.ts';
import { smoothNoise } from './smoothNoise.ts';

/** A surface under raking light whose marks are known. */
export type RenderedMarks = {
  picture: Picture;
  kind: MarkKind | 'none';
  truth: MarkTruth;
  /** As the examiner gives it: up to a tenth off. The truth is by this scale too. */
  mmPerPx: number;
  /** The direction of the board’s length in the picture, as an examiner gives it: off by a degree or two. */
  directionDeg: number;
};

/**
 * A board’s face with marks of one kind, photographed under raking light; the same seed gives the same picture.
 *
 * Method: heights in mm (see renderMarksHeights.ts), worn away in patches; the light falls at 5 to 18 degrees, within 55 degrees of square to the
 * marks, and shades by the slope over the tangent of its height, with up to 0.45 of light from all round; the wood is renderMarksWood.ts’s; the picture is turned by
 * up to 6 degrees, of gamma 1 to 2.4, and taken by a hand camera (renderMarksPrint.ts). The scale is given up to 10 in 100 wrong, and the truth by that scale.
 *
 * @param weak  a factor on all marks: 1 as they come
 */
export function renderMarks(kind: MarkKind | 'none', seed: number, weak = 1): RenderedMarks {
  const random = randomFrom(seed);
  const mmPerPx = random.between(0.165, 0.26);
  const [lengthMm, widthMm] = [random.between(95, 135), random.between(74, 100)];
  const [columns, rows] = [Math.round(lengthMm / mmPerPx), Math.round(widthMm / mmPerPx)];
  const turnRad = (random.between(-6, 6) * Math.PI) / 180;
  const { heights, truth } = markHeights(kind, random, { columns, rows, mmPerPx, turnRad });
  // From plain to nearly gone: a fifth of the depth to twice as much.
  const strength = weak * Math.exp(random.between(Math.log(0.2), Math.log(2)));
  const isAlong = kind === 'hand-planed' || kind === 'sliced';
  const lightRad = turnRad + (isAlong ? Math.PI / 2 : 0) + (random.between(-55, 55) * Math.PI) / 180;
  const lit = shadeOf(random, seed, lightRad, { heights, columns, rows, mmPerPx, strength });
  const gamma = random.between(1, 2.4);
  const wood = woodOf(random, seed, random.between(0.25, 0.7) ** gamma, turnRad, mmPerPx);
  const values = new Float32Array(columns * rows);
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) values[y * columns + x] = wood(x, y) * lit(x, y);
  const print = printLight({ columns, rows, values }, random, seed, mmPerPx, gamma);
  const pixels = Uint8Array.from(print.values, (each) => Math.round(255 * Math.min(1, Math.max(0, each))));
  const wrong = random.between(0.9, 1.1);
  const given = (mm: number | undefined) => (mm === undefined ? undefined : mm * wrong);
  return {
    picture: { widthPx: columns, heightPx: rows, channels: 1, pixels },
    kind,
    truth: { pitchMm: given(truth.pitchMm), radiusMm: given(truth.radiusMm) },
    mmPerPx: mmPerPx * viewScale * wrong,
    directionDeg: (turnRad * 180) / Math.PI + 1.2 * random.normal(),
  };
}

type Relief = { heights: Float32Array; columns: number; rows: number; mmPerPx: number; strength: number };

/** How strongly each pixel is lit for the slope it has there. */
function shadeOf(
  random: Random,
  seed: number,
  lightRad: number,
  { heights, columns, rows, mmPerPx, strength }: Relief,
): (x: number, y: number) => number {
  const tangent = Math.tan((random.between(5, 18) * Math.PI) / 180);
  const shine = [Math.cos(lightRad) / tangent, Math.sin(lightRad) / tangent] as const;
  const around = random.between(0, 0.45);
  const fall = [random.between(-0.3, 0.3), random.between(-0.3, 0.3)] as const;
  const at = (x: number, y: number) =>
    heights[Math.min(rows - 1, Math.max(0, y)) * columns + Math.min(columns - 1, Math.max(0, x))] as number;
  return (x, y) => {
    const worn = 0.75 + 0.25 * smoothNoise(seed + 3, (x * mmPerPx) / 28, (y * mmPerPx) / 28);
    const across = ((at(x + 1, y) - at(x - 1, y)) / (2 * mmPerPx)) * worn * strength;
    const down = ((at(x, y + 1) - at(x, y - 1)) / (2 * mmPerPx)) * worn * strength;
    const shade = Math.min(2.2, Math.max(0.05, 1 + across * shine[0] + down * shine[1]));
    const far = 1 + fall[0] * (x / columns - 0.5) + fall[1] * (y / rows - 0.5);
    return far * (around + (1 - around) * shade);
  };
}
