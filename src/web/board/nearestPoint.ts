import type { Point } from '../../photo/picture.ts';
import type { BoardMark } from './boardMark.ts';

/** The point that stands nearest to a place of the frame; points of the chosen mark come before others as near. */
export function nearestPoint(
  list: readonly BoardMark[],
  screen: (point: Point) => Point,
  [x, y]: Point,
  chosen: string | undefined,
) {
  return list
    .flatMap((mark) =>
      mark.points.map((point, index) => {
        const [px, py] = screen(point);
        return { mark, index, px: Math.hypot(px - x, py - y) - (mark.id === chosen ? 4 : 0) };
      }),
    )
    .toSorted((a, b) => a.px - b.px)[0];
}
