import { correlation, type GrainProfile, grainProfile } from './grainProfile.ts';
import type { FacingStrips } from './grainStrips.ts';

/** How well the grain on one side of a band goes on where the grain of the other side points. All in steps of the strips. */
export type GrainMatch = {
  /** Largest correlation of the two profiles within the shifts that one piece could show. */
  correlation: number;
  /** How far the second profile lies across from the first at that correlation, in the sense of growing columns. */
  shiftPx: number;
  /** The most that was allowed. */
  mostShiftPx: number;
  /** By how much the second had to be drawn out: 1 is not at all. */
  stretch: number;
  /** The same search over strips of this photograph that do not face each other. */
  null: { correlations: number[] };
  profiles: readonly [GrainProfile, GrainProfile];
  columns: number;
  /** From the middle of one strip to the middle of the other. */
  leverPx: number;
  gapPx: number;
  /** Standard uncertainty of the shift from the sharpness of the correlation alone. */
  peakSigmaPx: number;
};

const stretches = [0.975, 0.9875, 1, 1.0125, 1.025];

/**
 * Does the grain on both sides of a band fit together, and how well do strips fit that have nothing to do with each other?
 *
 * Method: each side's profile is followed along its grain to the band's middle; the largest normalised correlation within small shifts and a little stretch
 * is the match. The same search is made where nothing should fit: at shifts beyond those, between each profile and itself further along, and with one of them mirrored.
 * The profiles are closed to a ring for that, so that each search sees as much wood as the true one.
 *
 * @source normalised correlation is common practice; trying every offset to see what chance reaches after tree-ring dating (Baillie and Pilcher,
 *         Tree-Ring Bulletin 33 (1973) 7–14, read in its abstract); the search over non-facing strips is ours
 */
export function matchGrain({ strips, gapPx }: FacingStrips): GrainMatch {
  const profiles = [grainProfile(strips[0]), grainProfile(strips[1])] as const;
  const [first, second] = profiles.map(({ values }) => values) as [Float64Array, Float64Array];
  const columns = first.length;
  const lever = gapPx + (strips[0].rows + strips[1].rows) / 2;
  const mostShiftPx = Math.min(columns / 8, 1.5 + 0.05 * lever);
  const stretched = stretches.map((stretch) => ({ stretch, values: drawnOut(second, stretch) }));
  const reach = Math.ceil(mostShiftPx);
  const shifts = Array.from({ length: 2 * reach + 1 }, (_, at) => at - reach);
  const tried = stretched.flatMap(({ stretch, values }) =>
    shifts.map((shift) => ({ stretch, shift, correlation: shiftedCorrelation(first, values, shift) })),
  );
  const best = tried.reduce((top, each) => (each.correlation > top.correlation ? each : top));
  const at = (shift: number) =>
    tried.find((each) => each.stretch === best.stretch && each.shift === shift)?.correlation;
  const [left, right] = [at(best.shift - 1), at(best.shift + 1)];
  return {
    correlation: best.correlation,
    shiftPx: best.shift + vertex(left, best.correlation, right),
    mostShiftPx,
    stretch: best.stretch,
    null: { correlations: nonFacing(first, second, reach) },
    profiles,
    columns,
    leverPx: lever,
    gapPx,
    peakSigmaPx: sharpness(best.correlation, left, right, columns),
  };
}

/** Of the place of a correlation's peak, as for two copies of one signal each with its own noise. */
function sharpness(
  correlation: number,
  left: number | undefined,
  right: number | undefined,
  columns: number,
): number {
  const bend = left === undefined || right === undefined ? 0 : 2 * correlation - left - right;
  if (bend <= 0 || correlation <= 0) return columns / 8;
  return Math.min(columns / 8, Math.sqrt((1 - correlation ** 2) / (columns * bend * correlation)));
}

/** The best correlation in every window of shifts as wide as the true search, where no fit can be true. */
function nonFacing(first: Float64Array, second: Float64Array, reach: number): number[] {
  const mirrored = Float64Array.from(second).reverse();
  const pairs = [
    { a: first, b: second, facing: true },
    { a: first, b: first, facing: true },
    { a: second, b: second, facing: true },
    { a: first, b: mirrored, facing: false },
    { a: first, b: Float64Array.from(first).reverse(), facing: false },
    { a: second, b: mirrored, facing: false },
  ];
  return pairs.flatMap(({ a, b, facing }) => {
    const stretched = stretches.map((stretch) => drawnOut(b, stretch));
    const windows: number[] = [];
    const from = facing ? 2 * reach + 1 : 0;
    const to = facing ? a.length - 2 * reach - 1 : a.length;
    for (let start = from; start + 2 * reach + 1 <= to; start += 2 * reach + 1) {
      let best = -1;
      for (const values of stretched) {
        for (let shift = start; shift <= start + 2 * reach; shift++)
          best = Math.max(best, ringCorrelation(a, values, shift));
      }
      windows.push(best);
    }
    return windows;
  });
}

/** Of the columns that both have when the second is moved back by a shift. */
function shiftedCorrelation(first: Float64Array, second: Float64Array, shift: number): number {
  const count = first.length - Math.abs(shift);
  const a = first.subarray(Math.max(0, -shift), Math.max(0, -shift) + count);
  const b = second.subarray(Math.max(0, shift), Math.max(0, shift) + count);
  return correlation(a, b);
}

function ringCorrelation(a: Float64Array, b: Float64Array, shift: number): number {
  const count = a.length;
  let [ab, aa, bb] = [0, 0, 0];
  for (let at = 0; at < count; at++) {
    const other = at + shift;
    const x = a[at] as number;
    const y = b[other < count ? other : other - count] as number;
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

/** The values drawn out about their middle. */
function drawnOut(values: Float64Array, stretch: number): Float64Array {
  if (stretch === 1) return values;
  const middle = (values.length - 1) / 2;
  return values.map((_, at) => {
    const from = Math.min(values.length - 1, Math.max(0, middle + (at - middle) / stretch));
    const below = Math.min(values.length - 2, Math.floor(from));
    const share = from - below;
    return (values[below] as number) * (1 - share) + (values[below + 1] as number) * share;
  });
}

/** Where a parabola through three values a step apart is highest, from the middle one. */
function vertex(left: number | undefined, here: number, right: number | undefined): number {
  if (left === undefined || right === undefined) return 0;
  const bend = left - 2 * here + right;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (left - right) / (2 * bend))) : 0;
}
