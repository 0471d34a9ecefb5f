import type { Face, Look } from '../render/scene.ts';
import { cross, minus, unit, type Vec } from '../render/vector.ts';
import { type Point, winding } from './shapes.ts';

/**
 * A board of one outline, z from 0 to its thickness, the edges of its upper face bevelled.
 *
 * @param bevel  at each point of the outline: how far the bevel reaches in from the edge, and how deep it goes, mm
 */
export function bevelled(
  outline: readonly Point[],
  thickMm: number,
  bevel: (index: number) => readonly [number, number],
  looks: { face: Look; cut: Look },
): Face[] {
  const loop = winding(outline) > 0 ? [...outline] : outline.toReversed();
  const many = loop.length;
  const at = (i: number) => loop[(i + many) % many] as Point;
  const edge = loop.map(([x, y], i): Vec => [x, y, thickMm - bevel(i)[1]]);
  const inner = loop.map(([x, y], i): Vec => {
    const [a, b] = [at(i - 1), at(i + 1)];
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const far = bevel(i)[0] / long;
    return [x - (b[1] - a[1]) * far, y + (b[0] - a[0]) * far, thickMm];
  });
  const low = loop.map(([x, y]): Vec => [x, y, 0]);
  return [
    { loops: [inner], normal: [0, 0, 1], look: looks.face },
    { loops: [low.toReversed()], normal: [0, 0, -1], look: looks.face },
    ...strip(low, edge, looks.cut),
    ...strip(edge, inner, looks.cut),
  ];
}

function strip(below: Vec[], above: Vec[], look: Look): Face[] {
  return below.flatMap((a, i) => {
    const next = (i + 1) % below.length;
    const [b, c, d] = [below[next] as Vec, above[next] as Vec, above[i] as Vec];
    return [
      [a, b, c],
      [a, c, d],
    ].map((corners): Face => {
      const [p, q, r] = corners as [Vec, Vec, Vec];
      return { loops: [[p, q, r]], normal: unit(cross(minus(q, p), minus(r, p))), look };
    });
  });
}
