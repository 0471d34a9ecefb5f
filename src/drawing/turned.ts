import { between, endOf, lineTo, moved, type Point, type Run, reversed } from './outline.ts';

/**
 * A turning in elevation: half its profile, completed by its mirror image at the axis of the lathe, with a line across at
 * every arris.
 *
 * Method: the profile is closed by itself mirrored at the axis. Where two of its curves meet at an angle of more than a
 * sixth of a right angle a turner left an arris, and from the side an arris is seen as a straight line across.
 *
 * @param half  the profile on one side of the axis, from one end of the turning to the other, open
 * @param axis  where the axis stands: `x` for an upright one (a leg, a pillar), `y` for a lying one (a stretcher), in mm
 * @returns the closed outline, then its incised lines
 */
export function turned(half: Run, axis: { x: number } | { y: number }): Run[] {
  const across = ([x, y]: Point): Point => ('x' in axis ? [2 * axis.x - x, y] : [x, 2 * axis.y - y]);
  const back = reversed(moved(half, across));
  const closing = [
    ...half.curves,
    lineTo(endOf(half), back.start),
    ...back.curves,
    lineTo(endOf(back), half.start),
  ];
  const outline: Run = { ...half, curves: closing, closed: true };
  return [outline, ...arrises(half).map((place) => line(place, across(place)))];
}

function line(from: Point, to: Point): Run {
  return { start: from, curves: [lineTo(from, to)], closed: false, incised: true };
}

/** A sixth of a right angle. */
const arrisRad = Math.PI / 12;

function arrises({ start, curves }: Run): Point[] {
  const from = [start, ...curves.map(([, , end]) => end)];
  return curves.flatMap(([first], index): Point[] => {
    const place = from[index] as Point;
    const before = curves[index - 1];
    if (before === undefined) return [];
    const came =
      direction(before[1], place) ?? direction(between(from[index - 1] as Point, place, 0.9), place);
    const goes = direction(place, first) ?? direction(place, (curves[index] as Run['curves'][number])[2]);
    if (came === undefined || goes === undefined) return [];
    const turn = Math.abs(Math.atan2(Math.sin(goes - came), Math.cos(goes - came)));
    return turn > arrisRad ? [place] : [];
  });
}

function direction(from: Point, to: Point): number | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return Math.hypot(dx, dy) < 1e-6 ? undefined : Math.atan2(dy, dx);
}
