import { normalBelow } from './bodyMeasures.ts';

/** A surface of a part with how much use would touch it, place by place. */
export type Surface = {
  part: string;
  kind: string;
  /** What touches it, in words. */
  by: string;
  /** Along what the columns run: from one end to the other. */
  along: { from: string; to: string; lengthMm: number };
  /** The faces, one a row. */
  faces: string[];
  /** How many of 100 uses touch the part: an order of size, by judgement. */
  per100Uses: number;
  /** [face][place along]: how much each place is touched, the most touched one 1. */
  grid: number[][];
};

/** A band of touches: where its middle is, how that scatters, how broad what touches is, and how much of the whole it is. */
export type Band = { middleMm: number; sdMm: number; broadMm: number; weight: number };

/** How many places a surface is cut into along its length. */
export const places = 24;

/**
 * How much each place along a length is touched by bands.
 *
 * Method: the middle of what touches scatters normally, and it covers its breadth: the share of touches that cover a place
 * is that of middles within half the breadth of it. What falls beyond the ends is held at the ends where `heldWithin`.
 *
 * @returns number[24], unscaled
 */
export function touches(bands: readonly Band[], lengthMm: number): number[] {
  return Array.from({ length: places }, (_, index) => {
    const at = ((index + 0.5) / places) * lengthMm;
    return bands.reduce((sum, { middleMm, sdMm, broadMm, weight }) => {
      const covers = (side: number) => normalBelow((at - middleMm + side * (broadMm / 2)) / sdMm);
      return sum + weight * (covers(1) - covers(-1));
    }, 0);
  });
}

/** A surface from the touches of each face, scaled so that its most touched place is 1. */
export function surface(
  about: Omit<Surface, 'grid' | 'faces'>,
  faces: Readonly<Record<string, readonly number[]>>,
): Surface {
  const rows = Object.values(faces);
  const most = Math.max(1e-12, ...rows.flat());
  return { ...about, faces: Object.keys(faces), grid: rows.map((row) => row.map((each) => each / most)) };
}

/** Touches times a number. */
export function times(row: readonly number[], by: number): number[] {
  return row.map((each) => each * by);
}

/** The same everywhere along. */
export function even(value: number): number[] {
  return Array.from({ length: places }, () => value);
}

/** A curve over the share of the length, 0 to 1. */
export function along(value: (share: number) => number): number[] {
  return Array.from({ length: places }, (_, index) => value((index + 0.5) / places));
}
