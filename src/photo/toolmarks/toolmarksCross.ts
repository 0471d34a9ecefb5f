import type { MarksPlane } from './toolmarksPlane.ts';

/** Marks that cross the board: how they lean and bend, and the profile along the board once that is undone. */
export type CrossMarks = {
  /** Lean at the middle: mm along for each mm across. */
  lean: number;
  /** Bend: one over the radius of the arcs, 1/mm, with its standard uncertainty. */
  bend: number;
  bendSigma: number;
  /** Lightness along the board, averaged along the marks. */
  profile: Float64Array;
  /** Share of the strips’ variance that stays when they are averaged along the marks: 1 all marks, 1/strips none. */
  strength: number;
  /** The same with each half across by itself: more than `strength` where marks lean differently or end. */
  halfStrength: number;
  strips: number;
};

/** Strips across the board. */
const strips = 28;
/** Lean and bend looked for: up to 0.3 and 1/110 mm. */
const most = { lean: 0.3, bend: 1 / 110 };

/**
 * Finds the arcs or lines that cross a board.
 *
 * Method: the plane is cut into 28 strips along the board. For each lean and bend every strip is shifted along by the arc of a circle, and
 * they are averaged: marks of that shape stay, all else fades. The shape that leaves the most variance is the marks’; it is searched on a grid
 * and then ever more finely. The uncertainty of the bend is that of four quarters of the length, each fitted by itself from there.
 *
 * @accuracy on rendered arcs: see docs/toolmarks.md
 * @source ours: a Radon transform along arcs, on the usual one along lines
 */
export function crossMarks(plane: MarksPlane): CrossMarks {
  const rows = stripProfiles(plane);
  const finder = shapeFinder(rows, plane);
  const whole = finder(0, rows[0]?.length ?? 0, undefined);
  const length = rows[0]?.length ?? 0;
  const quarters = [0, 1, 2, 3].map((quarter) =>
    finder(Math.floor((quarter * length) / 4), Math.floor(((quarter + 1) * length) / 4), whole),
  );
  const mean = quarters.reduce((sum, each) => sum + each.bend, 0) / 4;
  const spread = Math.sqrt(quarters.reduce((sum, each) => sum + (each.bend - mean) ** 2, 0) / 3);
  const profile = averaged(rows, plane, whole.lean, whole.bend, 0, length, 0, strips);
  const base = rows.reduce((sum, row) => sum + variance(row), 0) / rows.length;
  const halves = [0, 1].map(
    (half) =>
      variance(
        averaged(
          rows,
          plane,
          whole.lean,
          whole.bend,
          0,
          length,
          (half * strips) / 2,
          ((half + 1) * strips) / 2,
        ),
      ) / base,
  );
  return {
    lean: whole.lean,
    bend: whole.bend,
    bendSigma: Math.max(spread / 2, 2e-5),
    profile,
    strength: variance(profile) / base,
    halfStrength: ((halves[0] as number) + (halves[1] as number)) / 2,
    strips,
  };
}

type Shape = { lean: number; bend: number; left: number };

function shapeFinder(rows: readonly Float64Array[], plane: MarksPlane) {
  const left = (lean: number, bend: number, from: number, to: number) =>
    variance(averaged(rows, plane, lean, bend, from, to, 0, strips));
  return (from: number, to: number, start: Shape | undefined): Shape => {
    let best: Shape = start ?? { lean: 0, bend: 0, left: -1 };
    best = { ...best, left: left(best.lean, best.bend, from, to) };
    const halfMm = (plane.across * plane.stepMm) / 2;
    // A step moves the rim of the plane by about half a millimetre.
    let [leanStep, bendStep] = [0.55 / halfMm, 1.1 / halfMm ** 2];
    const reach =
      start === undefined ? [Math.ceil(most.lean / leanStep), Math.ceil(most.bend / bendStep)] : [2, 3];
    for (let round = 0; round < 5; round++) {
      const [spanLean, spanBend] = round === 0 ? (reach as [number, number]) : [2, 2];
      const { lean: leanAt, bend: bendAt } = best;
      for (let i = -spanLean; i <= spanLean; i++)
        for (let j = -spanBend; j <= spanBend; j++) {
          const [lean, bend] = [leanAt + i * leanStep, bendAt + j * bendStep];
          const found = left(lean, bend, from, to);
          if (found > best.left) best = { lean, bend, left: found };
        }
      leanStep /= 2.2;
      bendStep /= 2.2;
    }
    return best;
  };
}

/** The lightness along each strip, slow changes taken off. */
function stripProfiles({ along, across, stepMm, values }: MarksPlane): Float64Array[] {
  const reach = Math.max(3, Math.round(6 / stepMm));
  return Array.from({ length: strips }, (_, strip) => {
    const [top, bottom] = [
      Math.floor((strip * across) / strips),
      Math.floor(((strip + 1) * across) / strips),
    ];
    const row = new Float64Array(along);
    for (let y = top; y < bottom; y++)
      for (let x = 0; x < along; x++)
        row[x] = (row[x] as number) + (values[y * along + x] as number) / (bottom - top);
    return withoutSlow(row, reach);
  });
}

/** A profile less its mean over `reach` samples either side. */
export function withoutSlow(row: Float64Array, reach: number): Float64Array {
  const sums = new Float64Array(row.length + 1);
  for (let at = 0; at < row.length; at++) sums[at + 1] = (sums[at] as number) + (row[at] as number);
  return row.map((value, at) => {
    const [from, to] = [Math.max(0, at - reach), Math.min(row.length, at + reach + 1)];
    return value - ((sums[to] as number) - (sums[from] as number)) / (to - from);
  });
}

/** Strips shifted along by an arc and averaged. */
function averaged(
  rows: readonly Float64Array[],
  { along, across, stepMm }: MarksPlane,
  lean: number,
  bend: number,
  from: number,
  to: number,
  firstStrip: number,
  lastStrip: number,
): Float64Array {
  const sum = new Float64Array(to - from);
  const count = new Float64Array(to - from);
  for (let strip = firstStrip; strip < lastStrip; strip++) {
    const acrossMm = ((strip + 0.5) / strips - 0.5) * across * stepMm;
    const shift = arcShift(lean, bend, acrossMm) / stepMm;
    const whole = Math.floor(shift);
    const part = shift - whole;
    const row = rows[strip] as Float64Array;
    const first = Math.max(from, -whole);
    const last = Math.min(to, along - 1 - whole);
    for (let at = first; at < last; at++) {
      sum[at - from] =
        (sum[at - from] as number) +
        (row[at + whole] as number) * (1 - part) +
        (row[at + whole + 1] as number) * part;
      count[at - from] = (count[at - from] as number) + 1;
    }
  }
  // Places that few strips reach say nothing.
  const least = 0.6 * (lastStrip - firstStrip);
  return sum.map((each, at) => ((count[at] as number) >= least ? each / (count[at] as number) : 0));
}

/** How far along a mark lies at a distance across, mm: a circle’s arc that leans at the middle. */
export function arcShift(lean: number, bend: number, acrossMm: number): number {
  const start = lean / Math.hypot(1, lean);
  if (Math.abs(bend) < 1e-7) return lean * acrossMm;
  const end = Math.min(0.999, Math.max(-0.999, start + bend * acrossMm));
  return (Math.sqrt(1 - start * start) - Math.sqrt(1 - end * end)) / bend;
}

function variance(row: Float64Array): number {
  let [sum, squares, count] = [0, 0, 0];
  for (const each of row)
    if (each !== 0) {
      sum += each;
      squares += each * each;
      count++;
    }
  if (count < row.length / 3) return 0;
  return squares / count - (sum / count) ** 2;
}
