import type { Face, Look } from '../render/scene.ts';
import { add, cross, dot, minus, times, unit, type Vec } from '../render/vector.ts';
import { type Point, winding } from './shapes.ts';

/** Where an outline lies: its plane's two directions, and the place of its 0, 0. The solid grows along u × v. */
export type Placing = { origin: Vec; u: Vec; v: Vec };

/** Outlines drawn from in front (x, y), growing toward the viewer from z. */
export const fromFront = (z: number): Placing => ({ origin: [0, 0, z], u: [1, 0, 0], v: [0, 1, 0] });
/** Outlines drawn from above as (x, −z), growing upward from y. */
export const fromAbove = (y: number): Placing => ({ origin: [0, y, 0], u: [1, 0, 0], v: [0, 0, -1] });
/** Outlines drawn from the right side as (−z, y), growing to the right from x. */
export const fromRight = (x: number): Placing => ({ origin: [x, 0, 0], u: [0, 0, -1], v: [0, 1, 0] });

/**
 * A solid of one outline (with holes) carried along a straight line.
 *
 * @param roundDeg  corners that turn by less than this are taken as parts of a curve and shaded as one
 */
export function extrude(
  outline: readonly Point[],
  placing: Placing,
  depth: number,
  look: Look,
  {
    holes = [],
    roundDeg = 32,
    ends,
  }: { holes?: readonly (readonly Point[])[]; roundDeg?: number; ends?: Look } = {},
): Face[] {
  const { origin, u, v } = placing;
  const way = unit(cross(u, v));
  const loops = [turned(outline, 1), ...holes.map((hole) => turned(hole, -1))];
  const at = ([a, b]: Point, far: number): Vec =>
    add(add(add(origin, times(u, a)), times(v, b)), times(way, far));
  const end = (far: number, normal: Vec): Face => ({
    loops: loops.map((loop) => loop.map((point) => at(point, far))),
    normal,
    look: ends ?? look,
  });
  return [
    end(depth, way),
    end(0, times(way, -1)),
    ...loops.flatMap((loop) => sides(loop, (point, far) => at(point, far), way, depth, look, roundDeg)),
  ];
}

/** A block by two opposite corners. */
export function box(low: Vec, high: Vec, look: Look, ends?: Look): Face[] {
  const outline: Point[] = [
    [low[0], low[1]],
    [high[0], low[1]],
    [high[0], high[1]],
    [low[0], high[1]],
  ];
  return extrude(outline, fromFront(low[2]), high[2] - low[2], look, { ends });
}

const turned = (loop: readonly Point[], sign: number): Point[] =>
  winding(loop) * sign > 0 ? [...loop] : loop.toReversed();

function sides(
  loop: Point[],
  at: (point: Point, far: number) => Vec,
  way: Vec,
  depth: number,
  look: Look,
  roundDeg: number,
): Face[] {
  const many = loop.length;
  const corner = (i: number) => at(loop[(i + many) % many] as Point, 0);
  const normals = loop.map((_, i) => unit(cross(minus(corner(i + 1), corner(i)), way)));
  const least = Math.cos((roundDeg * Math.PI) / 180);
  const shared = (i: number, j: number): Vec => {
    const [a, b] = [normals[i] as Vec, normals[(j + many) % many] as Vec];
    return dot(a, b) > least ? unit(add(a, b)) : a;
  };
  return loop.map((_, i) => {
    const [a, b] = [corner(i), corner(i + 1)];
    const up = times(way, depth);
    const face: Face = { loops: [[a, b, add(b, up), add(a, up)]], normal: normals[i] as Vec, look };
    const [n0, n1] = [shared(i, i - 1), shared(i, i + 1)];
    if (n0 === normals[i] && n1 === normals[i]) return face;
    return { ...face, normalAt: blend(a, minus(b, a), n0, n1) };
  });
}

/** The direction of a curved surface, going over from one end of a facet to the other. */
export function blend(from: Vec, run: Vec, n0: Vec, n1: Vec): NonNullable<Face['normalAt']> {
  const long = dot(run, run);
  return (x, y, z, out) => {
    const share = ((x - from[0]) * run[0] + (y - from[1]) * run[1] + (z - from[2]) * run[2]) / long;
    const t = Math.max(0, Math.min(1, share));
    const a = n0[0] + (n1[0] - n0[0]) * t;
    const b = n0[1] + (n1[1] - n0[1]) * t;
    const c = n0[2] + (n1[2] - n0[2]) * t;
    const size = Math.sqrt(a * a + b * b + c * c);
    out[0] = a / size;
    out[1] = b / size;
    out[2] = c / size;
  };
}
