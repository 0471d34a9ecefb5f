import type { Picture, Region } from '../picture.ts';
import { lightnessPlane, type Plane } from './grainPlane.ts';
import { gradientReachPx, structureTensor, type TensorCell, type TensorGrid } from './grainTensor.ts';

/** One square of the map, in the picture's own pixels; the direction is null where that square can't tell. */
export type GrainCell = { x: number; y: number; orientationDeg: number | null; coherence: number };

/** How the grain of a region runs. Angles from the x axis towards y, which points down: clockwise as seen. */
export type GrainDirection = {
  says: 'runs' | 'cannot-tell';
  /** Along the grain, −90 to 90. A number also where `says` is cannot-tell, and then worth nothing. */
  orientationDeg: number;
  /** Standard uncertainty of the mean direction, k = 1. */
  sigmaDeg: number;
  /** How far the direction wanders over the region, as a standard deviation between squares. */
  spreadDeg: number;
  coherence: number;
  /** Root mean square of the change in lightness (0–100) from pixel to pixel. */
  contrast: number;
  why?: 'plain' | 'no-direction' | 'wanders';
  /** How many pixels a side were averaged into one. */
  factor: number;
  map: { columns: number; rows: number; cellPx: number; cells: GrainCell[] };
};

/** Below this many steps of lightness from pixel to pixel there is nothing but the file's own rounding. */
const leastContrast = 0.15;
/** Noise alone gives a coherence of a few hundredths over a few thousand pixels, brushed or pressed surfaces somewhat more. */
const leastCoherence = 0.15;
const mostSigmaDeg = 8;

/**
 * How does the grain run in this region of a photograph, and how sure is that?
 *
 * Method: lightness, averaged down where the region is above four million pixels; structure tensor over squares; the sum of the squares' tensors gives
 * the direction across the grain (largest eigenvalue), so the grain runs at a right angle to it, and the coherence
 * (difference of the eigenvalues over their sum). The uncertainty is a jackknife over the squares.
 *
 * @param region  whole pixels inside the picture, at least 16 a side
 * @accuracy gratings of known direction within 0.1° and coherence within 0.02 (src/photo/grain/grain.test.ts); rendered boards in docs/grain.md
 */
export function grainDirection(picture: Picture, region: Region): GrainDirection {
  const plane = lightnessPlane(picture, region);
  const grid = structureTensor(plane, cellSide(plane));
  const total = grid.cells.reduce(added);
  const coherence = coherenceOf(total);
  const contrast = Math.sqrt((total.xx + total.yy) / Math.max(1, total.pixels));
  const alongRad = alongOf(total);
  const sigmaDeg = jackknifeDeg(grid.cells, total, alongRad);
  const why =
    contrast < leastContrast
      ? 'plain'
      : coherence < leastCoherence
        ? 'no-direction'
        : sigmaDeg > mostSigmaDeg
          ? 'wanders'
          : undefined;
  return {
    says: why ? 'cannot-tell' : 'runs',
    orientationDeg: degrees(alongRad),
    sigmaDeg,
    spreadDeg: spreadDeg(grid.cells, alongRad),
    coherence,
    contrast,
    ...(why && { why }),
    factor: plane.factor,
    map: mapOf(grid, region, plane.factor),
  };
}

/** The direction along the grain of a tensor, −π/2 to π/2: at a right angle to that of the steepest change. */
function alongOf({ xx, xy, yy }: TensorCell): number {
  const across = Math.atan2(2 * xy, xx - yy) / 2;
  return across > 0 ? across - Math.PI / 2 : across + Math.PI / 2;
}

/** 0 where no direction is preferred, 1 where all change is across one. */
function coherenceOf({ xx, xy, yy }: TensorCell): number {
  const energy = xx + yy;
  return energy > 0 ? Math.hypot(xx - yy, 2 * xy) / energy : 0;
}

/** About 12 squares along the shorter side, none under 24 pixels unless the region is small. */
function cellSide({ widthPx, heightPx }: Plane): number {
  const shorter = Math.min(widthPx, heightPx);
  return Math.max(Math.min(24, Math.floor(shorter / 2)), Math.floor(shorter / 12), 2 * gradientReachPx + 2);
}

function added(a: TensorCell, b: TensorCell): TensorCell {
  return { xx: a.xx + b.xx, xy: a.xy + b.xy, yy: a.yy + b.yy, pixels: a.pixels + b.pixels };
}

/** The spread of the direction when each square in turn is left out; never below what the taps themselves may be off by. */
function jackknifeDeg(cells: readonly TensorCell[], total: TensorCell, alongRad: number): number {
  const count = cells.length;
  if (count < 2) return 90;
  const squares = cells.reduce((sum, cell) => {
    const without = alongOf({
      xx: total.xx - cell.xx,
      xy: total.xy - cell.xy,
      yy: total.yy - cell.yy,
      pixels: 0,
    });
    return sum + turn(without, alongRad) ** 2;
  }, 0);
  return Math.min(90, Math.hypot(degrees(Math.sqrt((squares * (count - 1)) / count)), 0.05));
}

function spreadDeg(cells: readonly TensorCell[], alongRad: number): number {
  let [weight, squares] = [0, 0];
  for (const cell of cells) {
    const own = Math.hypot(cell.xx - cell.yy, 2 * cell.xy);
    weight += own;
    squares += own * turn(alongOf(cell), alongRad) ** 2;
  }
  return weight > 0 ? degrees(Math.sqrt(squares / weight)) : 90;
}

/** The smaller turn between two directions that are alike after half a turn. */
function turn(a: number, b: number): number {
  const apart = a - b;
  return apart - Math.PI * Math.round(apart / Math.PI);
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

function mapOf(grid: TensorGrid, region: Region, factor: number): GrainDirection['map'] {
  const side = grid.cellPx * factor;
  const cells = grid.cells.map((cell, index): GrainCell => {
    const coherence = coherenceOf(cell);
    const contrast = Math.sqrt((cell.xx + cell.yy) / Math.max(1, cell.pixels));
    const tells = contrast >= leastContrast && coherence >= 2 * leastCoherence;
    return {
      x: region.x + (index % grid.columns) * side,
      y: region.y + Math.floor(index / grid.columns) * side,
      orientationDeg: tells ? degrees(alongOf(cell)) : null,
      coherence,
    };
  });
  return { columns: grid.columns, rows: grid.rows, cellPx: side, cells };
}
