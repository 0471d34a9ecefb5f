import { sum } from '../../ground/statistics.ts';
import type { Picture, Point, Region } from '../picture.ts';
import { lightnessPlane, type Plane } from './grainPlane.ts';

/** Where an examiner marked wood: a rectangle, or the corners of any shape in order. */
export type StripArea = Region | { points: readonly Point[] };

/**
 * Wood beside a band, laid straight: rows along the part, columns across it, in steps of one pixel of the (averaged) picture.
 * What lies outside the marked area is NaN. Row 0 is next to the band.
 */
export type Strip = {
  rows: number;
  columns: number;
  values: Float32Array /** From the band's middle to row 0. */;
  toMiddlePx: number;
};

export type FacingStrips = {
  strips: readonly [Strip, Strip];
  /** Pixels of the picture that went into a side of one step. */
  factor: number;
  /** Of the band, in steps. */
  gapPx: number;
  /** Whether the second area named comes first along the part. */
  swapped: boolean;
};

export type StripsFault = 'overlap-along' | 'no-overlap-across';

/** Wider parts are averaged down: this much detail tells boards apart, and more only costs time. */
const mostStripPixels = 600_000;

/**
 * Two areas on either side of a band, turned so that the part runs along the rows' order, and cut to the width that both have.
 *
 * @param directionDeg  of the part, from the x axis towards y (down)
 */
export function facingStrips(
  picture: Picture,
  a: StripArea,
  b: StripArea,
  directionDeg: number,
): FacingStrips | StripsFault {
  const corners = [cornersOf(a), cornersOf(b)] as const;
  const box = boxOf(corners.flat(), picture);
  const plane = lightnessPlane(picture, box, mostStripPixels);
  const local = corners.map((area) =>
    area.map(([x, y]): Point => [(x - box.x) / plane.factor, (y - box.y) / plane.factor]),
  );
  const angle = (directionDeg * Math.PI) / 180;
  const frame = { cos: Math.cos(angle), sin: Math.sin(angle) };
  const swapped = middle(local[0] as Point[], frame) > middle(local[1] as Point[], frame);
  const [before, after] = (swapped ? [local[1], local[0]] : local) as [Point[], Point[]];
  const across = [spanOf(before, frame, acrossOf), spanOf(after, frame, acrossOf)] as const;
  const from = Math.max(across[0][0], across[1][0]);
  const to = Math.min(across[0][1], across[1][1]);
  if (to - from < 4) return 'no-overlap-across';
  const spans = [spanOf(before, frame, alongOf), spanOf(after, frame, alongOf)] as const;
  const edges = [innerEdge(before, frame, from, to, 1), innerEdge(after, frame, from, to, -1)] as const;
  if (edges[0] > edges[1]) return 'overlap-along';
  const middlePx = (edges[0] + edges[1]) / 2;
  const first = sampled(plane, before, frame, [from, to], spans[0][1], spans[0][0], middlePx);
  const second = sampled(plane, after, frame, [from, to], spans[1][0], spans[1][1], middlePx);
  return { strips: [first, second], factor: plane.factor, gapPx: edges[1] - edges[0], swapped };
}

type Frame = { cos: number; sin: number };

function alongOf([x, y]: Point, { cos, sin }: Frame): number {
  return x * cos + y * sin;
}

function acrossOf([x, y]: Point, { cos, sin }: Frame): number {
  return y * cos - x * sin;
}

function middle(area: readonly Point[], frame: Frame): number {
  return area.reduce((sum, point) => sum + alongOf(point, frame), 0) / area.length;
}

function spanOf(
  area: readonly Point[],
  frame: Frame,
  of: (point: Point, frame: Frame) => number,
): [number, number] {
  const values = area.map((point) => of(point, frame));
  return [Math.min(...values), Math.max(...values)];
}

/** Where the area ends towards the band, in the mean over its width. */
function innerEdge(area: readonly Point[], frame: Frame, from: number, to: number, towards: 1 | -1): number {
  const [least, most] = spanOf(area, frame, alongOf);
  const lines = Array.from({ length: 9 }, (_, index) => from + ((index + 0.5) / 9) * (to - from));
  const ends = lines.flatMap((across) => {
    for (let step = 0; step <= most - least; step += 0.5) {
      const along = towards === 1 ? most - step : least + step;
      if (within(area, placeOf(along, across, frame))) return [along];
    }
    return [];
  });
  return sum(ends) / Math.max(1, ends.length);
}

function placeOf(along: number, across: number, { cos, sin }: Frame): Point {
  return [along * cos - across * sin, along * sin + across * cos];
}

function sampled(
  plane: Plane,
  area: readonly Point[],
  frame: Frame,
  [from, to]: [number, number],
  near: number,
  far: number,
  middlePx: number,
): Strip {
  const columns = Math.floor(to - from);
  const rows = Math.max(1, Math.floor(Math.abs(far - near)));
  const step = Math.sign(far - near);
  const values = new Float32Array(rows * columns).fill(Number.NaN);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const place = placeOf(near + step * (row + 0.5), from + column + 0.5, frame);
      if (within(area, place)) values[row * columns + column] = between(plane, place);
    }
  }
  return {
    rows,
    columns,
    values,
    toMiddlePx: Math.abs(near + step * 0.5 - middlePx) * Math.sign((near - middlePx) * step || 1),
  };
}

/** The value at a place, blended from the four pixels about it; NaN at the picture's border. */
function between({ widthPx, heightPx, values }: Plane, [x, y]: Point): number {
  const left = Math.floor(x - 0.5);
  const top = Math.floor(y - 0.5);
  if (left < 0 || top < 0 || left + 1 >= widthPx || top + 1 >= heightPx) return Number.NaN;
  const right = x - 0.5 - left;
  const down = y - 0.5 - top;
  const at = top * widthPx + left;
  const upper = (values[at] as number) * (1 - right) + (values[at + 1] as number) * right;
  const lower = (values[at + widthPx] as number) * (1 - right) + (values[at + widthPx + 1] as number) * right;
  return upper * (1 - down) + lower * down;
}

/** Whether a place lies inside: a ray crosses the outline an odd number of times. */
function within(area: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  for (let index = 0, last = area.length - 1; index < area.length; last = index++) {
    const [ax, ay] = area[index] as Point;
    const [bx, by] = area[last] as Point;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

export function cornersOf(area: StripArea): Point[] {
  if ('points' in area) return [...area.points];
  const { x, y, widthPx, heightPx } = area;
  return [
    [x, y],
    [x + widthPx, y],
    [x + widthPx, y + heightPx],
    [x, y + heightPx],
  ];
}

function boxOf(points: readonly Point[], picture: Picture): Region {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const x = Math.max(0, Math.floor(Math.min(...xs)));
  const y = Math.max(0, Math.floor(Math.min(...ys)));
  return {
    x,
    y,
    widthPx: Math.min(picture.widthPx, Math.ceil(Math.max(...xs))) - x,
    heightPx: Math.min(picture.heightPx, Math.ceil(Math.max(...ys))) - y,
  };
}
