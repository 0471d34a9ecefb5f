import type { Camera } from './camera.ts';
import { type FlatLoop, fillLoops } from './fillLoops.ts';
import type { Face } from './scene.ts';
import { cross, dot, minus, type Vec } from './vector.ts';

/**
 * Which face is nearest at every sample, and how near. `nearness` is 1 ÷ distance along the ray; it is a flat
 * function of the sample's place, `a·x + b·y + c`, kept for each face in `planes`.
 */
export type Seen = {
  across: number;
  high: number;
  face: Int32Array;
  nearness: Float32Array;
  planes: Float64Array;
};

const nearestMm = 5;

/** Finds what the camera sees. A face turned away is left out. */
export function seeFaces(faces: readonly Face[], camera: Camera, across: number, high: number): Seen {
  const seen: Seen = {
    across,
    high,
    face: new Int32Array(across * high).fill(-1),
    nearness: new Float32Array(across * high),
    planes: new Float64Array(faces.length * 3),
  };
  faces.forEach((face, index) => {
    const place = face.loops[0]?.[0] as Vec;
    const away = dot(face.normal, minus(place, camera.eye));
    if (away >= 0) return;
    const a = dot(face.normal, camera.right) / away;
    const b = dot(face.normal, camera.down) / away;
    const c = dot(face.normal, camera.corner) / away;
    seen.planes.set([a, b, c], index * 3);
    const loops = face.loops.map((loop) => projected(inFront(loop, camera), camera));
    fillLoops(loops, across, high, (row, from, to) => {
      const start = b * (row + 0.5) + c;
      for (let x = from, at = row * across + from; x <= to; x++, at++) {
        const near = a * (x + 0.5) + start;
        if (near > (seen.nearness[at] as number)) {
          seen.nearness[at] = near;
          seen.face[at] = index;
        }
      }
    });
  });
  return seen;
}

/** The part of a loop that lies in front of the camera. */
function inFront(loop: Vec[], { eye, forward }: Camera): Vec[] {
  const depth = loop.map((one) => dot(minus(one, eye), forward) - nearestMm);
  if (depth.every((one) => one > 0)) return loop;
  return loop.flatMap((here, index) => {
    const next = (index + 1) % loop.length;
    const [d0, d1, there] = [depth[index] as number, depth[next] as number, loop[next] as Vec];
    const kept = d0 > 0 ? [here] : [];
    if (d0 > 0 === d1 > 0) return kept;
    const share = d0 / (d0 - d1);
    const cut: Vec = [
      here[0] + (there[0] - here[0]) * share,
      here[1] + (there[1] - here[1]) * share,
      here[2] + (there[2] - here[2]) * share,
    ];
    return [...kept, cut];
  });
}

function projected(loop: Vec[], camera: Camera): FlatLoop {
  const { eye, corner, right, down } = camera;
  const across = cross(down, corner);
  const along = cross(corner, right);
  const through = cross(right, down);
  return loop.flatMap((place) => {
    const ray = minus(place, eye);
    const depth = dot(ray, through);
    return [dot(ray, across) / depth, dot(ray, along) / depth];
  });
}
