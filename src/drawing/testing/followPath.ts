/** A point on a sheet. */
export type Point = readonly [number, number];

/** A stretch of a path as a row of points close together. */
export type Trail = { points: Point[]; closed: boolean };

/**
 * Follows SVG path data as an eye would: straight stretches and curves both, each as points close together.
 *
 * A second way of reading the path, apart from any that draws it; arcs by their end and center (SVG 2, appendix B.2.4).
 *
 * @param steps how many points a stretch has at the least
 */
export function followPath(d: string, steps = 12): Trail[] {
  const trails: Trail[] = [];
  let trail: Trail = { points: [], closed: false };
  let [here, handle]: [Point, Point] = [
    [0, 0],
    [0, 0],
  ];
  for (const { letter, numbers } of commandsOf(d)) {
    const from = here;
    const place = (index: number): Point => {
      const [x, y] = [numbers[index] ?? 0, numbers[index + 1] ?? 0];
      return isRelative(letter) ? [from[0] + x, from[1] + y] : [x, y];
    };
    const kind = letter.toUpperCase();
    if (kind === 'M') {
      here = place(0);
      trail = { points: [here], closed: false };
      trails.push(trail);
      handle = here;
      continue;
    }
    if (kind === 'Z') {
      trail.closed = true;
      here = trail.points[0] ?? here;
      handle = here;
      continue;
    }
    const smooth: Point = [2 * from[0] - handle[0], 2 * from[1] - handle[1]];
    const [only = 0] = numbers;
    const bends: Record<string, Point[]> = {
      L: [place(0)],
      H: [[isRelative(letter) ? from[0] + only : only, from[1]]],
      V: [[from[0], isRelative(letter) ? from[1] + only : only]],
      Q: [place(0), place(2)],
      T: [smooth, place(0)],
      C: [place(0), place(2), place(4)],
      S: [smooth, place(0), place(2)],
    };
    const along = kind === 'A' ? arc(from, numbers, place(5), steps) : bezier(from, bends[kind] ?? [], steps);
    trail.points.push(...along);
    here = along.at(-1) ?? from;
    handle = 'QTCS'.includes(kind) ? ((bends[kind] ?? []).at(-2) ?? here) : here;
  }
  return trails;
}

/** How many numbers each letter takes. */
const takes: Record<string, number> = { M: 2, L: 2, T: 2, H: 1, V: 1, Q: 4, S: 4, C: 6, A: 7, Z: 0 };

const isRelative = (letter: string) => letter !== letter.toUpperCase();

function commandsOf(d: string): { letter: string; numbers: number[] }[] {
  const tokens = d.match(/[a-zA-Z]|-?\d*\.?\d+/g) ?? [];
  const commands: { letter: string; numbers: number[] }[] = [];
  let letter = 'M';
  for (let at = 0; at < tokens.length; ) {
    if (/[a-zA-Z]/.test(tokens[at] ?? '')) letter = tokens[at++] ?? '';
    // Numbers after those of a move are lines.
    else if (letter.toUpperCase() === 'M') letter = isRelative(letter) ? 'l' : 'L';
    const count = takes[letter.toUpperCase()] ?? 0;
    commands.push({ letter, numbers: tokens.slice(at, at + count).map(Number) });
    at += count;
  }
  return commands;
}

/** Points of a Bézier curve of any degree after its beginning (de Casteljau). */
function bezier(from: Point, rest: readonly Point[], steps: number): Point[] {
  return Array.from({ length: steps }, (_, index) => {
    const share = (index + 1) / steps;
    let row: Point[] = [from, ...rest];
    while (row.length > 1)
      row = row.slice(1).map(([x, y], at): Point => {
        const [beforeX, beforeY] = row[at] ?? [x, y];
        return [beforeX + (x - beforeX) * share, beforeY + (y - beforeY) * share];
      });
    return row[0] ?? from;
  });
}

/** Points of an elliptical arc that is not turned, after its beginning. */
function arc([x1, y1]: Point, numbers: readonly number[], [x2, y2]: Point, steps: number): Point[] {
  const [givenX = 1, givenY = 1, , large = 0, sweep = 0] = numbers;
  const [halfX, halfY] = [(x1 - x2) / 2, (y1 - y2) / 2];
  // Radii too small for the way are made large enough for it.
  const grow = Math.max(1, Math.hypot(halfX / givenX, halfY / givenY));
  const [rx, ry] = [givenX * grow, givenY * grow];
  const reach = (halfX / rx) ** 2 + (halfY / ry) ** 2;
  const aside = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, 1 / reach - 1));
  const [centerX, centerY] = [
    (x1 + x2) / 2 + (aside * rx * halfY) / ry,
    (y1 + y2) / 2 - (aside * ry * halfX) / rx,
  ];
  const angle = (x: number, y: number) => Math.atan2((y - centerY) / ry, (x - centerX) / rx);
  const [first, last] = [angle(x1, y1), angle(x2, y2)];
  const turn =
    sweep === 1
      ? (last - first + 4 * Math.PI) % (2 * Math.PI)
      : -((first - last + 4 * Math.PI) % (2 * Math.PI));
  return Array.from({ length: steps }, (_, index): Point => {
    const at = first + (turn * (index + 1)) / steps;
    return [centerX + rx * Math.cos(at), centerY + ry * Math.sin(at)];
  });
}
