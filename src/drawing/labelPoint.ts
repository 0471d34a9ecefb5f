import type { Box } from './extentOf.ts';
import { isInside, type Point } from './outline.ts';

/** A shape as polygons, with the box around it. */
export type Area = { polygons: readonly Point[][]; box: Box };

/**
 * Where a number or word on a shape stands best: well inside it, and where no shape in front covers it.
 *
 * Method: of a grid of points over the shape's box, the one inside and uncovered that is farthest from the shape's
 * edges; where everything is covered, the farthest from the edges all the same; for a shape finer than the grid, the middle
 * of its box.
 */
export function labelPoint(shape: Area, inFront: readonly Area[]): [number, number] {
  const [left, top, width, height] = shape.box;
  const near = inFront.filter((area) => overlap(area.box, shape.box));
  const [x, y] = roomiest(shape, near) ?? roomiest(shape, []) ?? [left + width / 2, top + height / 2];
  return [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
}

/** Steps of the grid; more of them cost more than they better the place. */
const grid = 11;

function roomiest(shape: Area, inFront: readonly Area[]): Point | undefined {
  let best: Point | undefined;
  let most = 0;
  for (const { point, roomAtMost } of gridPoints(shape.box)) {
    if (roomAtMost <= most) break;
    if (!covers(shape, point)) continue;
    const room = roomAt(shape.polygons, point, most);
    if (room <= most || inFront.some((area) => covers(area, point))) continue;
    [best, most] = [point, room];
  }
  return best;
}

/** The grid over a box, those first that can lie farthest from a shape's edges: no farther than from the box's. */
function gridPoints([left, top, width, height]: Box): { point: Point; roomAtMost: number }[] {
  const points = [];
  for (let i = 1; i < grid; i++) {
    for (let j = 1; j < grid; j++) {
      const point: Point = [left + (width * i) / grid, top + (height * j) / grid];
      const roomAtMost = Math.min(width * Math.min(i, grid - i), height * Math.min(j, grid - j)) / grid;
      points.push({ point, roomAtMost });
    }
  }
  return points.sort((a, b) => b.roomAtMost - a.roomAtMost);
}

/** Whether two boxes share any room. */
export function overlap(a: Box, b: Box): boolean {
  return a[0] < b[0] + b[2] && b[0] < a[0] + a[2] && a[1] < b[1] + b[3] && b[1] < a[1] + a[3];
}

/** Whether a point lies in an area; openings are not of it. */
export function covers({ polygons, box: [left, top, width, height] }: Area, point: Point): boolean {
  const [x, y] = point;
  if (x < left || x > left + width || y < top || y > top + height) return false;
  let inside = false;
  for (const polygon of polygons) if (isInside(point, polygon)) inside = !inside;
  return inside;
}

/** How far the nearest edge is; once that is no more than `enough`, whatever was found. */
function roomAt(polygons: readonly Point[][], [x, y]: Point, enough: number): number {
  const enough2 = enough * enough;
  let least = Number.POSITIVE_INFINITY;
  for (const polygon of polygons) {
    let [fromX, fromY] = polygon.at(-1) as Point;
    for (const [toX, toY] of polygon) {
      const [dx, dy] = [toX - fromX, toY - fromY];
      const length2 = dx * dx + dy * dy;
      const along = length2 === 0 ? 0 : ((x - fromX) * dx + (y - fromY) * dy) / length2;
      const t = Math.min(1, Math.max(0, along));
      const far2 = (fromX + t * dx - x) ** 2 + (fromY + t * dy - y) ** 2;
      if (far2 < least) least = far2;
      if (least <= enough2) return Math.sqrt(least);
      [fromX, fromY] = [toX, toY];
    }
  }
  return Math.sqrt(least);
}
