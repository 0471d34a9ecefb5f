import type { Fault } from '../../ground/fault.ts';
import type { Point } from '../picture.ts';
import { directHomography, mapped } from './homography.ts';
import type { Pairs } from './planeView.ts';

/** Three points count as in line where the middle one is off by less than this share of the longest side. */
const inLineShare = 1e-3;
/** Points count as one where they are closer than this share of the whole spread. */
const sameShare = 1e-9;
/** Below this the pairs leave the view open. */
const leastFirmness = 1e-6;

/**
 * Do these pairs fix how the plane is seen?
 *
 * @returns the first fault found, or undefined where they do
 */
export function pairFault({ image, world }: Pairs): Fault | undefined {
  if (image.length < 4)
    return fault(
      'too-few',
      'image',
      `${counted(image.length)} cannot fix a plane: mark at least four points of known place, best the corners of something rectangular.`,
    );
  if (world.length !== image.length)
    return fault(
      'unlike-counts',
      'world',
      `There are ${image.length} points in the picture and ${world.length} known places: give each point its place, in the same order.`,
    );
  const doubled = sameFault(image, 'image', 'in the picture') ?? sameFault(world, 'world', 'on the piece');
  if (doubled !== undefined) return doubled;
  if (image.length === 4) {
    const inLine =
      inLineFault(image, 'image', 'in the picture') ?? inLineFault(world, 'world', 'on the piece');
    if (inLine !== undefined) return inLine;
  }
  const { homography, firmness } = directHomography(image, world);
  if (!(firmness > leastFirmness))
    return fault(
      'open',
      'image',
      'All points, or all but one, lie in one line, and leave the plane open: add points well off that line.',
    );
  return horizonFault(image, homography);
}

function horizonFault(image: readonly Point[], homography: Parameters<typeof mapped>[0]): Fault | undefined {
  const sides = image.map((point) => Math.sign(mapped(homography, point).w));
  const front = sides.filter((side) => side > 0).length * 2 >= sides.length ? 1 : -1;
  const behind = sides.findIndex((side) => side !== front);
  if (behind < 0) return undefined;
  return fault(
    'crossed',
    `image[${behind}]`,
    `Point ${behind + 1} would lie beyond the horizon of the plane: the points are not in the same order in the picture and on the piece, or one is misplaced; go round both the same way.`,
  );
}

function sameFault(points: readonly Point[], path: string, where: string): Fault | undefined {
  const spread = longestSide(points);
  for (let i = 0; i < points.length; i++) {
    for (let j = 0; j < i; j++) {
      if (apart(points[i] as Point, points[j] as Point) > sameShare * spread) continue;
      return fault(
        'same-point',
        `${path}[${i}]`,
        `Points ${j + 1} and ${i + 1} are the same ${where}: mark two different ones, far apart.`,
      );
    }
  }
  return undefined;
}

function inLineFault(points: readonly Point[], path: string, where: string): Fault | undefined {
  const threes = [
    [0, 1, 2],
    [0, 1, 3],
    [0, 2, 3],
    [1, 2, 3],
  ];
  const found = threes.find((three) => isInLine(three.map((i) => points[i] as Point)));
  if (found === undefined) return undefined;
  return fault(
    'in-line',
    path,
    `Points ${found
      .map((i) => i + 1)
      .slice(0, 2)
      .join(
        ', ',
      )} and ${(found[2] as number) + 1} lie in one line ${where}: of four points no three may; take corners, or add a point off the line.`,
  );
}

function isInLine(three: readonly Point[]): boolean {
  const [a, b, c] = three as [Point, Point, Point];
  const area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  const longest = longestSide(three);
  return area <= inLineShare * longest * longest;
}

function longestSide(points: readonly Point[]): number {
  let longest = 0;
  for (const a of points) for (const b of points) longest = Math.max(longest, apart(a, b));
  return longest;
}

function apart([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(ax - bx, ay - by);
}

function counted(count: number): string {
  return count === 1 ? 'One point' : count === 0 ? 'No points' : `${['Two', 'Three'][count - 2]} points`;
}

function fault(what: string, path: string, message: string): Fault {
  return { code: `photo.${what}`, path, message };
}
