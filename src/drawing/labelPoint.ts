import type { Box } from './extentOf.ts';
import { isInside, type Point } from './outline.ts';

/** A shape as polygons, with the box around it. */
export type Area = { polygons: readonly Point[][]; box: Box };

/**
 * Where a number or word on a shape stands best: well inside it, and where no shape in front covers it.
 *
 * Method: of a grid of points over the shape's box, the one inside and uncovered that is farthest from the shape's
 * edges; where everything is covered, the farthest from the edges; for a shape finer than the grid, the middle of its box.
 */
export function labelPoint(shape: Area, inFront: readonly Area[]): [number, number] {
  const [left, top, width, height] = shape.box;
  let any = { point: [left + width / 2, top + height / 2] as Point, room: 0 };
  let open: { point: Point; room: number } | undefined;
  for (let i = 1; i < grid; i++) {
    for (let j = 1; j < grid; j++) {
      const point: Point = [left + (width * i) / grid, top + (height * j) / grid];
      if (!covers(shape, point)) continue;
      const room = distanceToEdge(shape.polygons, point);
      if (room > any.room) any = { point, room };
      if (room > (open?.room ?? 0) && !inFront.some((area) => covers(area, point))) open = { point, room };
    }
  }
  const [x, y] = (open ?? any).point;
  return [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
}

const grid = 14;

/** Whether a point lies in an area; openings are not of it. */
export function covers({ polygons, box: [left, top, width, height] }: Area, point: Point): boolean {
  const [x, y] = point;
  if (x < left || x > left + width || y < top || y > top + height) return false;
  return polygons.filter((polygon) => isInside(point, polygon)).length % 2 === 1;
}

function distanceToEdge(polygons: readonly Point[][], [x, y]: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const polygon of polygons) {
    polygon.forEach(([toX, toY], i) => {
      const [fromX, fromY] = polygon.at(i - 1) as Point;
      const [dx, dy] = [toX - fromX, toY - fromY];
      const length2 = dx * dx + dy * dy;
      const along = length2 === 0 ? 0 : ((x - fromX) * dx + (y - fromY) * dy) / length2;
      const t = Math.min(1, Math.max(0, along));
      least = Math.min(least, Math.hypot(fromX + t * dx - x, fromY + t * dy - y));
    });
  }
  return least;
}
