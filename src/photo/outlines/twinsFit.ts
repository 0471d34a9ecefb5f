import type { Point } from '../picture.ts';
import { type Motion, moved, movedBack, nearestMotion } from './twinsMotion.ts';
import { apart, evenOutline, nearestFinder } from './twinsOutline.ts';

/** Two outlines laid on each other as well as they go. */
export type TwinFit = {
  /** Root mean square and largest distance between them, both ways. */
  rms: number;
  max: number;
  /** What brings the second, turned over first where `mirrored`, onto the first. */
  motion: Motion;
  /** Where they are furthest apart, on the first. */
  worst: Point;
};

/** An outline to compare, and whether it comes back to its beginning. */
export type Outline = { points: readonly Point[]; closed: boolean };

const coarse = 96;
const fine = 240;

/**
 * Lays one outline on another by turning and shifting it, with or without turning it over.
 *
 * Method: both are cut into evenly spaced points; partner by partner, either way round and from every twelfth of a closed
 * outline’s length, the three best starts are kept; each is improved by turns of pairing every point with the nearest place of the
 * other outline, both ways, and the motion that fits those pairs best, until nothing moves.
 *
 * @param first, second  in one unit; at least 3 points each
 * @param mirrored       whether the second is turned over first
 * @param scaled         whether its size may change too
 * @accuracy known motions are found to a thousandth of the size, by test; with noise of s on both, rms comes to about √2 · s
 * @source iterated closest points: Besl and McKay 1992, from memory
 */
export function twinsFit(first: Outline, second: Outline, mirrored: boolean, scaled: boolean): TwinFit {
  const turnedOver = mirrored ? second.points.map(([x, y]): Point => [-x, y]) : second.points;
  const other = { points: turnedOver, closed: second.closed };
  const rough = [sampled(first, coarse), sampled(other, coarse)] as const;
  const started = starts(...rough, scaled)
    .map((motion) => improved(...rough, motion, scaled, 25))
    .sort((a, b) => a.rms - b.rms);
  const best = (started[0] as TwinFit).motion;
  return improved(sampled(first, fine), sampled(other, fine), best, scaled, 60);
}

function sampled({ points, closed }: Outline, count: number): Outline {
  return { points: evenOutline(points, count, closed), closed };
}

function starts(first: Outline, second: Outline, scaled: boolean): Motion[] {
  const count = second.points.length;
  const shifts = first.closed && second.closed ? Array.from({ length: 24 }, (_, i) => (i * count) / 24) : [0];
  const ordered = [second.points, [...second.points].reverse()];
  return ordered
    .flatMap((points) => shifts.map((shift) => [...points.slice(shift), ...points.slice(0, shift)]))
    .map((points) => {
      const motion = nearestMotion(points, first.points, scaled);
      const squares = points.reduce(
        (sum, point, index) => sum + apart(moved(point, motion), first.points[index] as Point) ** 2,
        0,
      );
      return { motion, squares };
    })
    .sort((a, b) => a.squares - b.squares)
    .slice(0, 3)
    .map(({ motion }) => motion);
}

/** A fit with the pairs that the next motion is found from: places of the second, and where they belong on the first. */
type Paired = TwinFit & { from: Point[]; to: Point[] };

function improved(first: Outline, second: Outline, start: Motion, scaled: boolean, most: number): TwinFit {
  const onFirst = nearestFinder(first.points, first.closed);
  const onSecond = nearestFinder(second.points, second.closed);
  const laid = (motion: Motion) => paired(first, second, motion, onFirst, onSecond);
  let fit = laid(start);
  for (let turn = 0; turn < most; turn++) {
    const next = laid(nearestMotion(fit.from, fit.to, scaled));
    if (!(next.rms < fit.rms)) break;
    const settled = fit.rms - next.rms < 1e-5 * fit.rms;
    fit = next;
    if (settled) break;
  }
  const { rms, max, motion, worst } = fit;
  return { rms, max, motion, worst };
}

function paired(
  first: Outline,
  second: Outline,
  motion: Motion,
  onFirst: (point: Point) => Point,
  onSecond: (point: Point) => Point,
): Paired {
  let [squares, max, worst] = [0, 0, first.points[0] as Point];
  const take = (here: Point, there: Point, on: Point) => {
    const distance = apart(here, there);
    squares += distance * distance;
    if (distance > max) [max, worst] = [distance, on];
  };
  const there = second.points.map((point) => {
    const here = moved(point, motion);
    const near = onFirst(here);
    take(here, near, near);
    return near;
  });
  const back = first.points.map((point) => {
    const near = onSecond(movedBack(point, motion));
    take(point, moved(near, motion), point);
    return near;
  });
  return {
    rms: Math.sqrt(squares / (there.length + back.length)),
    max,
    motion,
    worst,
    from: [...second.points, ...back],
    to: [...there, ...first.points],
  };
}
