import type { Scene } from './scene.ts';
import { cross, minus, times, unit, type Vec } from './vector.ts';

/** Rays of a picture: the ray through (x, y), in samples from the upper left, is `corner + x·right + y·down`. */
export type Camera = { eye: Vec; forward: Vec; corner: Vec; right: Vec; down: Vec };

/** The camera of a scene for a grid of so many samples. */
export function cameraOf(scene: Scene, across: number, high: number): Camera {
  const forward = unit(minus(scene.target, scene.eye));
  const side = unit(cross(forward, [0, 1, 0]));
  const up = cross(side, forward);
  const half = Math.tan((scene.fieldDeg * Math.PI) / 360);
  const wide = (half * across) / high;
  return {
    eye: scene.eye,
    forward,
    right: times(side, (2 * wide) / across),
    down: times(up, (-2 * half) / high),
    corner: [
      forward[0] - side[0] * wide + up[0] * half,
      forward[1] - side[1] * wide + up[1] * half,
      forward[2] - side[2] * wide + up[2] * half,
    ],
  };
}
