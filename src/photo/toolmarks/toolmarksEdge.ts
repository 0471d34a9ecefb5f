import type { MarksPlane } from './toolmarksPlane.ts';

/** A straight line that parts a region into a lighter and a darker side. */
export type MarksEdge = {
  /** How far the sides’ lightness differs at the line, as a natural logarithm. */
  step: number;
  /** The same over the spread of lightness within the sides. */
  clear: number;
};

/** Cells of at least this size smooth the texture; strips of so many cells either side are compared. */
const cellMm = 1;
const strip = 3;

/**
 * The strongest straight edge of a region: of a board, of a hard shadow, of another surface.
 *
 * Method: the plane is averaged into cells of a millimetre. For lines of 36 directions at every distance, the means of strips of three cells either side are
 * compared, and so are those of all that lies on either side; the lesser difference counts, so that waves and ridges, which come back, count little.
 * A side has at least 4 in 100 of the region. Spread is that within the sides.
 *
 * @source ours
 */
export function strongestEdge(plane: MarksPlane): MarksEdge {
  const { cells, columns, rows } = cellsOf(plane);
  const all = cells.length;
  let best: MarksEdge = { step: 0, clear: 0 };
  for (let turn = 0; turn < 36; turn++) {
    const [cos, sin] = [Math.cos((turn * Math.PI) / 36), Math.sin((turn * Math.PI) / 36)];
    const half = Math.ceil(Math.hypot(columns, rows) / 2) + 1;
    const [sums, squares, counts] = [0, 1, 2].map(() => new Float64Array(2 * half + 2)) as [
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    for (let at = 0; at < all; at++) {
      const far = cos * ((at % columns) - columns / 2) + sin * (Math.floor(at / columns) - rows / 2);
      const bin = Math.round(far) + half + 1;
      const value = cells[at] as number;
      sums[bin] = (sums[bin] as number) + value;
      squares[bin] = (squares[bin] as number) + value * value;
      counts[bin] = (counts[bin] as number) + 1;
    }
    for (const part of [sums, squares, counts])
      for (let bin = 1; bin < part.length; bin++)
        part[bin] = (part[bin] as number) + (part[bin - 1] as number);
    const last = counts.length - 1;
    const mean = (from: number, to: number) =>
      ((sums[to] as number) - (sums[from] as number)) /
      Math.max(1, (counts[to] as number) - (counts[from] as number));
    for (let bin = strip; bin + strip <= last; bin++) {
      const before = counts[bin] as number;
      if (before < 0.04 * all || before > 0.96 * all) continue;
      const near = mean(bin, bin + strip) - mean(bin - strip, bin);
      const far = mean(bin, last) - mean(0, bin);
      if (near * far <= 0) continue;
      const step = Math.min(Math.abs(near), Math.abs(far));
      if (step <= best.step) continue;
      const within =
        ((squares[last] as number) - before * mean(0, bin) ** 2 - (all - before) * mean(bin, last) ** 2) /
        all;
      best = { step, clear: step / Math.sqrt(Math.max(1e-8, within)) };
    }
  }
  return best;
}

function cellsOf({ along, across, stepMm, values }: MarksPlane) {
  const size = Math.max(1, Math.round(cellMm / stepMm));
  const [columns, rows] = [Math.floor(along / size), Math.floor(across / size)];
  const cells = new Float64Array(columns * rows);
  for (let y = 0; y < rows * size; y++)
    for (let x = 0; x < columns * size; x++) {
      const cell = Math.floor(y / size) * columns + Math.floor(x / size);
      cells[cell] = (cells[cell] as number) + (values[y * along + x] as number) / (size * size);
    }
  return { cells, columns, rows };
}
