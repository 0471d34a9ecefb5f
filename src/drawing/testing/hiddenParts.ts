import type { Drawing } from '../drawForm.ts';
import { extentOf } from '../extentOf.ts';
import { type Area, covers, overlap } from '../labelPoint.ts';
import { type Curve, flattened, lineTo, type Point, type Run } from '../outline.ts';

/**
 * The parts that no view shows uncovered anywhere: nobody could touch them.
 *
 * Method: each shape is tried on a grid of points over its box, and on points just inside its corners, until one lies
 * in it and in no shape in front.
 */
export function hiddenParts({ views }: Drawing): string[] {
  const hidden = new Set(views.flatMap(({ shapes }) => shapes.map(({ part }) => part)));
  for (const { shapes } of views) {
    const areas = shapes.map(({ d }): Area => areaOf(runsOf(d)));
    shapes.forEach(({ part }, at) => {
      if (hidden.has(part) && isSeen(areas[at] as Area, areas.slice(at + 1))) hidden.delete(part);
    });
  }
  return [...hidden].sort();
}

function isSeen(area: Area, inFront: readonly Area[]): boolean {
  const near = inFront.filter(({ box }) => overlap(box, area.box));
  for (const point of triedIn(area))
    if (covers(area, point) && !near.some((other) => covers(other, point))) return true;
  return false;
}

const steps = 40;

function* triedIn({ box: [left, top, width, height], polygons }: Area): Generator<Point> {
  for (let i = 1; i < steps; i++)
    for (let j = 1; j < steps; j++) yield [left + (width * i) / steps, top + (height * j) / steps];
  for (const [x, y] of polygons.flat())
    for (const dx of [2, -2]) for (const dy of [2, -2]) yield [x + dx, y + dy];
}

function areaOf(runs: readonly Run[]): Area {
  return { polygons: runs.map((run) => flattened(run, 5)), box: extentOf(runs) };
}

/** The outlines of an SVG path of M, L, C and Z; lines cut in have no inside and are harmless. */
function runsOf(d: string): Run[] {
  return d
    .split('M')
    .slice(1)
    .map((text) => {
      const [first, ...rest] = text.split(/(?=[LCZ])/);
      const start = pointsIn(first ?? '')[0] ?? [0, 0];
      const curves: Curve[] = [];
      for (const step of rest) {
        const points = pointsIn(step);
        const from = curves.at(-1)?.[2] ?? start;
        if (step.startsWith('L')) curves.push(lineTo(from, points[0] ?? from));
        if (step.startsWith('C')) curves.push(points as unknown as Curve);
      }
      return { start, curves, closed: true, incised: false };
    });
}

function pointsIn(text: string): Point[] {
  const numbers = text.match(/-?\d+(\.\d+)?/g)?.map(Number) ?? [];
  return numbers.flatMap((x, at): Point[] => (at % 2 === 0 ? [[x, numbers[at + 1] ?? 0]] : []));
}
